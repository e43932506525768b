/**
 * Names of foods and dishes that the source does not have, for which nothing should be found. Split
 * and scored in food-names.ts, which says how the list was made.
 */
export const ABSENT_NAMES = `
## foods that the source does not have
venison = none
duck breast = none
halloumi = none
paneer = none
quail eggs = none
lobster tails = none
squid = none
mussels = none
monkfish = none
jackfruit = none
lemongrass = none
star anise = none
saffron threads = none
nutritional yeast = none
rhubarb = none
celeriac = none
swede = none
mascarpone = none
lychees = none
passion fruit = none
oat milk = none
coconut water = none
plantain = none
artichoke hearts = none
chicken livers = none
lamb kidneys = none
ghee = none
gochujang = none
tapioca starch = none
dragonfruit = none
seaweed = none
chicken nuggets = none
pork pie = none
black pudding = none
apple pie = none
macadamia nuts = none
sumac = none
kohlrabi = none
buckwheat flour = none
pea protein powder = none
ice cream = none
orange squash = none
egg fried rice = none
potato crisps = none
tomato soup = none
chocolate cake = none
fish fingers = none
rabbit = none
tuna mayonnaise = none
garlic bread = none
lemon curd = none
coconut flour = none
beef jerky = none
milk chocolate = none
peanut brittle = none
asdf = none
xyzzy plugh = none
the usual = none
`;
