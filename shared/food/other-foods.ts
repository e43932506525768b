/**
 * Words for foods, dishes and tastes that are no slip of the pen for another word, whether the table
 * has them or not: "perch" is no "peach", "tamarind" no "tamari". In the singular, one spelling.
 */
export const OTHER_FOODS: ReadonlySet<string> = new Set(
  `
  agar aioli ale amaranth anise apricot arrowroot artichoke bar barramundi bass batter bechamel
  biryani biscuit bison bisque boar bologna bolognese brandy bratwurst brawn brazil breadfruit
  bream brie brill brioche brownie buckwheat buffalo bun burger buttery cake camembert capon
  caramel carbonara carob carp cassava casserole caviar celeriac cereal cheesecake cheesy
  cherimoya chervil chestnut chewy chicle chicory chimichurri chowder chutney cockle cola cookie
  cordial cracker crayfish creamy crepe cress crisp crispbread croissant crumble crumpet crunch
  culture cupcake curd currant curry custard daikon damson dough doughnut dripping duck dumpling
  durian edam eel elderberry endive falafel farro feijoa fishy flapjack frankfurter freekeh fruity
  fudge garlicky gelato ghee gin gnocchi goat goose gooseberry gouda goulash granola grapefruit
  gravy grits grouper grouse guacamole guava guinea haggis hake halloumi hare harissa herring
  hollandaise hominy huss jackfruit jello jelly jicama juniper kangaroo kebab kefir kelp kidney
  kipper kohlrabi korma kumquat lager langoustine lard lasagne lavender lemonade lemony ling liver
  lobster lovage lupin lychee macadamia macaron macaroon mace margarita marinade marinate marlin
  marmalade marrow marshmallow marzipan mascarpone meaty merguez meringue milky mint mincemeat sweetmeat monkfish
  mooli mortadella moussaka mousse muesli muffin mulberry mullet mussel mutton nectarine nigella
  nori nougat nugget nutty octopus ostrich paella pancake paneer partridge pastie pastrami pastry
  pasty pectin peppery perch persimmon pheasant piccalilli pie pigeon pike pilaf pilchard plantain
  plum polony pomelo porridge port poussin pretzel prosciutto provolone psyllium pudding pullet
  quail quark quiche quince rabbit radicchio rambutan ravioli relish rhubarb risotto roe rum
  rutabaga saffron sago saithe salami salsify salty sambal samosa samphire satsuma sauce scone
  seaweed semolina shark sheep sherbet sherry skate skyr smelt smoke smoky smoothie sorbet sorghum
  sorrel soup spice spicy sprat squid starchy starfruit steam stew stout stroganoff strudel
  sturgeon suet sugary sumac sushi swede sweetener swordfish syrupy tagine tamarillo tamarind
  tapioca taro tarragon tart tea teff tempura tikka toffee tomatillo tongue tortellini trifle
  tripe turbot tzatziki veal venison vermouth vodka wafer waffle wakame wasabi watercress whelk
  whiskey whisky whiting winkle wonton xanthan yam yuca
`
    .trim()
    .split(/\s+/u),
);
