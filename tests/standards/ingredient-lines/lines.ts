/**
 * Ingredient lines as people write them, each with what a careful reader takes from it. Written before the
 * reader was measured or tuned on any of them; every second line is for tuning, the others are the test.
 *
 * One line each: text | amount | numbers of the USDA SR28 foods it may be taken for | flags
 *
 * amount: "600 g", "3-4 piece" for a range, "1 piece =50 g" where a weight in brackets tells what it weighs,
 * "taste" where none is meant, "?" where no amount is given. Numbers: "-" where the table has no such food.
 * Flags: taste, optional, swap (the line offers another food).
 */
export const LABELLED_LINES = `
600g boneless skinless thighs, diced | 600 g | 05096 |
2 x 400 g tins chopped tomatoes, drained | 800 g | 11885,11531,11693 |
1 1/2 cups (360 ml) vegetable stock | 360 ml | 06700 |
½ tsp ground cumin | 0.5 tsp | 02014 |
a pinch of salt | 1 pinch | 02047 |
juice of 1 lemon | 1 piece | 09152 |
3–4 garlic cloves, crushed | 3-4 piece | 11215 |
1 large egg (50 g) | 1 piece =50 g | 01123 |
salt & pepper to taste | taste | 02047,02030 | taste
1 lb 8 oz lean beef mince (5 % fat) | 1.5 lb | 23557 |
1 cup rice, uncooked | 1 cup | 20044,20444,20050,20052 |
200 g cooked rice | 200 g | 20045,20445 |
butter or oil, 10 g | 10 g | 01001,01145 | swap
2 medium onions, finely chopped | 2 piece | 11282 |
1 kg floury potatoes, peeled and cut into chunks | 1 kg | 11352,11353 |
250 ml semi-skimmed milk | 250 ml | 01079 |
1 tbsp olive oil | 1 tbsp | 04053 |
2 tbsp soy sauce | 2 tbsp | 16123 |
400 g can of chickpeas, rinsed and drained | 400 g | 16359,16358 |
150g Greek yoghurt (0% fat) | 150 g | 01256 |
Handful of fresh coriander, chopped | ? | 11165 |
1,5 kg carrots | 1.5 kg | 11124 |
1,500 g carrots | 1500 g | 11124 |
zest of 2 limes | 2 piece | - |
4 x 150 g salmon fillets | 600 g | 15236,15076,15085 |
1 red pepper, deseeded and sliced | 1 piece | 11821 |
2 spring onions, sliced (optional) | 2 piece | 11291 | optional
30 g parmesan, finely grated | 30 g | 01032,01033 |
100g/3½oz plain flour | 100 g | 20081,20581 |
1 tin (400g) kidney beans in water, drained | 400 g | 16145,16335 |
5 ml vanilla extract | 5 ml | 02050 |
1 bay leaf | 1 piece | 02004 |
350 g dried penne | 350 g | 20120 |
300 g cooked pasta | 300 g | 20121 |
sea salt | ? | 02047 |
freshly ground black pepper, to taste | taste | 02030 | taste
1 heaped tsp smoked paprika | 1 tsp | 02028 |
3 tablespoons low-fat mayonnaise | 3 tbsp | 04641 |
Olive oil for frying | ? | 04053 |
1 thumb-sized piece of ginger, grated | 1 piece | 11216 |
500 g turkey mince (7% fat) | 500 g | 05665 |
500 g passata | 500 g | 11547,11549 |
2 tsp cornflour mixed with 1 tbsp water | 2 tsp | 20027 |
12 cherry tomatoes, halved | 12 piece | 11529 |
120 g baby spinach | 120 g | 11457 |
1 head of broccoli (about 350 g), in florets | 350 g | 11090 |
6 large flour tortillas | 6 piece | 18364,18970 |
200 ml reduced-fat coconut milk | 200 ml | 12118,12117 |
1 tbsp honey or maple syrup | 1 tbsp | 19296 | swap
75g frozen peas | 75 g | 11312 |
2 limes, juiced | 2 piece | 09160,09159 |
2 cups shredded cooked chicken | 2 cup | 05013,05009 |
8 oz mushrooms, sliced | 8 oz | 11260,11266 |
1 1/4 lbs ground pork | 1.25 lb | 10219,10972 |
1 (15 oz) can black beans, drained and rinsed | 15 oz | 16018,16015 |
3/4 cup low sodium chicken broth | 0.75 cup | 06183 |
2 stalks celery, diced | 2 piece | 11143 |
1 stick butter (113 g), melted | 113 g | 01001,01145 |
1/4 tsp cayenne | 0.25 tsp | 02031 |
2 tbsp. tomato paste | 2 tbsp | 11546 |
1 pint cherry tomatoes | 1 pint | 11529 |
2 quarts water | 2 quart | 14411,14429 |
16 fl oz skim milk | 16 fl oz | 01085 |
1 dl cream | 1 dl | 01053 |
15g fresh basil leaves | 15 g | 02044 |
4 slices wholemeal bread | 4 piece | 18075 |
60 g rolled oats | 60 g | 08120,08121 |
1 scoop (30 g) whey protein powder | 30 g | 14066,14058 |
2 egg whites | 2 piece | 01124 |
1 egg yolk | 1 piece | 01125 |
3 eggs, beaten | 3 piece | 01123 |
2 hard-boiled eggs, quartered | 2 piece | 01129 |
50g dark chocolate (70% cocoa) | 50 g | 19904 |
1 ripe avocado, sliced | 1 piece | 09037 |
2 bananas | 2 piece | 09040 |
100 g blueberries (fresh or frozen) | 100 g | 09050,09054 |
25 g flaked almonds, toasted | 25 g | 12061,12063 |
1 tbsp peanut butter | 1 tbsp | 16098,16398 |
2 tbsp tahini | 2 tbsp | 12166 |
400 ml water | 400 ml | 14411,14429 |
1 vegetable stock cube | 1 piece | - |
1 chicken stock cube | 1 piece | 06081 |
Salt, to taste | taste | 02047 | taste
Salt | ? | 02047 |
A drizzle of sesame oil | ? | 04058 |
1 tsp each ground coriander and turmeric | 1 tsp | 02013 |
700g sweet potatoes, scrubbed and cubed | 700 g | 11507 |
1 small butternut squash (800 g) | 1 piece =800 g | 11485 |
2 courgettes (about 400 g), grated | 2 piece =400 g | 11477 |
1 aubergine, in 2 cm cubes | 1 piece | 11209 |
200 g green beans, trimmed | 200 g | 11052 |
1 cauliflower | 1 piece | 11135 |
80 g rocket | 80 g | 11959 |
100 g feta, crumbled | 100 g | 01019 |
125 g mozzarella ball, torn | 125 g | 01026,01028 |
2 tbsp capers, drained | 2 tbsp | 02054 |
10 green olives, pitted | 10 piece | 09195 |
1 tbsp Dijon mustard | 1 tbsp | 02046 |
1 tsp dried oregano | 1 tsp | 02027 |
2 sprigs fresh rosemary | 2 piece | 02063 |
1/2 bunch parsley | 0.5 piece | 11297 |
1½ tbsp cider vinegar | 1.5 tbsp | 02048 |
60ml balsamic vinegar | 60 ml | 02069 |
1 tbsp Worcestershire sauce | 1 tbsp | 06971 |
2 tsp fish sauce | 2 tsp | 06179 |
1 tbsp oyster sauce (optional) | 1 tbsp | 06176 | optional
3 tbsp sriracha | 3 tbsp | 06631 |
250 g firm tofu, pressed and cubed | 250 g | 16126 |
200 g tempeh | 200 g | 16114 |
180 g red lentils, rinsed | 180 g | 16144 |
250 g pouch cooked green lentils | 250 g | 16070 |
150 g quinoa (dry weight) | 150 g | 20035 |
320 g cooked quinoa | 320 g | 20137 |
200 g couscous | 200 g | 20028 |
160 g bulgur wheat | 160 g | 20012 |
300 g pearl barley | 300 g | 20005 |
250 g egg noodles, dried | 250 g | 20109 |
200 g rice noodles | 200 g | 20133 |
240 g basmati rice | 240 g | 20044,20444 |
1 cup brown rice | 1 cup | 20036 |
500 g lean pork tenderloin, trimmed | 500 g | 10060 |
4 pork chops (150 g each) | 4 piece =600 g | 10066 |
6 rashers streaky bacon | 6 piece | 10123 |
200 g cooked ham, diced | 200 g | 07028,10136,10182 |
450 g lamb mince | 450 g | 17224 |
800 g diced stewing beef | 800 g | 23092 |
2 sirloin steaks (225 g each), fat removed | 2 piece =450 g | 23369 |
1 kg chicken drumsticks, skin on | 1 kg | 05066 |
600 g chicken breast, cut into strips | 600 g | 05062 |
300 g raw king prawns, peeled | 300 g | 15149,15270 |
4 cod fillets, about 140 g each | 4 piece =560 g | 15015 |
2 x 145 g cans tuna in spring water, drained | 290 g | 15121,15126 |
120 g smoked salmon | 120 g | 15179 |
100g reduced fat cheddar, grated | 100 g | 01260 |
200 g low-fat cottage cheese | 200 g | 01016,01015 |
180 g light cream cheese | 180 g | 01017 |
100 ml double cream | 100 ml | 01053 |
200 g half-fat crème fraîche | 200 g | 01055,01179 |
300 ml unsweetened soya milk | 300 ml | 16222 |
250 ml unsweetened almond milk | 250 ml | 14091 |
2 tbsp desiccated coconut | 2 tbsp | 12108 |
1 tbsp chia seeds | 1 tbsp | 12006 |
20 g pumpkin seeds | 20 g | 12014,12016 |
30g walnuts, roughly chopped | 30 g | 12155 |
40 g raisins | 40 g | 09298 |
6 medjool dates, stoned | 6 piece | 09421 |
2 apples, cored and grated | 2 piece | 09003 |
1 orange, zest and juice | 1 piece | 09200,09202,09206 |
150 g raspberries | 150 g | 09302 |
1 mango, cubed | 1 piece | 09176 |
100 g pineapple chunks in juice | 100 g | 09268 |
2 tbsp caster sugar | 2 tbsp | 19335 |
1 tbsp brown sugar, packed | 1 tbsp | 19334 |
1 tsp baking powder | 1 tsp | 18369 |
½ tsp bicarbonate of soda | 0.5 tsp | 18372 |
25 g cocoa powder | 25 g | 19165 |
1 sachet (7 g) dried yeast | 7 g | 18375 |
50 g panko breadcrumbs | 50 g | 18079 |
2 wholewheat pitta breads | 2 piece | 18042 |
4 burger buns | 4 piece | 18350 |
8 corn tortillas | 8 piece | 18363 |
200 g sweetcorn, drained | 200 g | 11172 |
1 tin sweetcorn (198 g), drained | 198 g | 11172 |
140g tomato purée | 140 g | 11546,11547 |
1 jar (350 g) pasta sauce | 350 g | 06931 |
2 tbsp green pesto | 2 tbsp | 06626 |
120 g salsa | 120 g | 06164 |
80 g hummus | 80 g | 16158,16137 |
1 tsp garlic powder | 1 tsp | 02020 |
1 tsp onion granules | 1 tsp | 02026 |
2 tsp mild chilli powder | 2 tsp | 02009 |
1 tbsp garam masala | 1 tbsp | - |
1 tbsp medium curry powder | 1 tbsp | 02015 |
1 cinnamon stick | 1 piece | 02010 |
6 cardamom pods | 6 piece | 02006 |
½ tsp ground nutmeg | 0.5 tsp | 02025 |
1 red chilli, deseeded, finely chopped | 1 piece | 11819 |
1-2 green chillies, sliced | 1-2 piece | 11670 |
1 jalapeño, diced | 1 piece | 11979 |
4 shallots, peeled | 4 piece | 11677 |
1 leek, washed and sliced | 1 piece | 11246 |
1 fennel bulb | 1 piece | 11957 |
200g chestnut mushrooms | 200 g | 11266 |
100 g kale, stalks removed | 100 g | 11233 |
2 pak choi, quartered | 2 piece | 11116 |
1/2 red cabbage (about 400g), shredded | 0.5 piece =400 g | 11112 |
1 cucumber, deseeded | 1 piece | 11205 |
2 romaine hearts | 2 piece | 11251 |
300 g beetroot, cooked, cubed | 300 g | 11081 |
250 g asparagus tips | 250 g | 11011 |
200 g Brussels sprouts, halved | 200 g | 11098 |
150 g mangetout | 150 g | 11300 |
100 g edamame beans (frozen) | 100 g | 11211 |
100 g bean sprouts | 100 g | 11043 |
4 parsnips | 4 piece | 11298 |
2 turnips, diced | 2 piece | 11564 |
50g sun-dried tomatoes in oil, drained | 50 g | 11956 |
5 plum tomatoes | 5 piece | 11529 |
3 gherkins, chopped | 3 piece | 11937 |
30 g kimchi | 30 g | 11118 |
2 tsp white miso paste | 2 tsp | 16112 |
1 tbsp tamari (gluten free) | 1 tbsp | 16124 |
2 tbsp reduced-salt soy sauce | 2 tbsp | 16424 |
1 tbsp rice vinegar | 1 tbsp | 02053 |
1 tbsp rapeseed oil | 1 tbsp | 04582 |
spray oil | ? | 04582,04053,04044 |
2 tsp coconut oil, melted | 2 tsp | 04047 |
100 ml dry white wine | 100 ml | 14106 |
150 ml red wine | 150 ml | 14096 |
300 ml beef stock | 300 ml | 06008 |
500 ml hot chicken stock | 500 ml | 06194 |
2 cups all-purpose flour, sifted | 2 cup | 20081,20581 |
1/3 cup whole wheat flour | 1/3 cup | 20080 |
60g butter, unsalted, at room temperature | 60 g | 01145 |
1 tbsp margarine | 1 tbsp | 04611 |
200 g silken tofu | 200 g | 16127 |
1 block (280 g) extra firm tofu | 280 g | 16159 |
2 tbsp sour cream | 2 tbsp | 01056 |
1 cup buttermilk | 1 cup | 01088,01230 |
150 g natural yogurt | 150 g | 01116 |
1 tbsp lemon juice | 1 tbsp | 09152 |
1 tsp lemon zest | 1 tsp | 09156 |
2 tbsp sunflower seeds | 2 tbsp | 12036 |
15 g sesame seeds | 15 g | 12023 |
1 tbsp ground flaxseed | 1 tbsp | 12220 |
1 large onion (200 g) or 2 leeks | 1 piece =200 g | 11282 | swap
600 g chicken thighs or firm tofu | 600 g | 05096,05091 | swap
1 cup + 2 tbsp oats | 1.125 cup | 08120,08121 |
2 tbsp 1 tsp paprika | 2 1/3 tbsp | 02028 |
about 300 g new potatoes, halved | 300 g | 11352,11353 |
approx. 2 kg chicken legs, bone in | 2 kg | - |
1 whole chicken (1.6 kg) | 1 piece =1.6 kg | 05006 |
450g/1lb minced beef | 450 g | 23572,23567,23562 |
10oz/283g frozen chopped spinach, thawed | 10 oz | 11463 |
1 package (10 oz) frozen broccoli | 10 oz | 11092 |
- 250 g dried black beans, soaked overnight | 250 g | 16014 |
• 2 tbsp chopped chives | 2 tbsp | 11156 |
* 1 tbsp fresh dill | 1 tbsp | 02045 |
3 tbsp fresh mint, chopped | 3 tbsp | - |
1 dash hot sauce | 1 piece | 06168 |
two tablespoons of honey | 2 tbsp | 19296 |
a handful of spinach | ? | 11457 |
half a cucumber, diced | 0.5 piece | 11205 |
one 400 g tin of butter beans | 400 g | - |
½–¾ tsp chilli flakes | 0.5-0.75 tsp | 02031 |
2 to 3 tablespoons milk | 2-3 tbsp | 01077,01079 |
1 ½ teaspoons salt | 1.5 tsp | 02047 |
1½ teaspoons kosher salt | 1.5 tsp | 02047 |
cooking spray | ? | 04582,04053,04044 |
water, as needed | taste | 14411,14429 | taste
250g cooked, peeled prawns | 250 g | 15151,15271 |
350g skinless, boneless chicken breasts, cooked | 350 g | 05064,05747,05746 |
100g cooked weight of brown rice | 100 g | 20037 |
75 g (dry) basmati | 75 g | 20044,20444 |
6 eggs (medium) | 6 piece | 01123 |
5 large free-range eggs | 5 piece | 01123 |
125g/4½oz ricotta | 125 g | 01036,01037 |
400 g tinned plum tomatoes | 400 g | 11531,11885 |
3 garlic cloves, 1 crushed and 2 sliced | 3 piece | 11215 |
20 g fresh ginger (about 4 cm) | 20 g | 11216 |
2 lemons: zest of one, juice of both | 2 piece | 09150,09152 |
1 tbsp oil (rapeseed, sunflower or olive) | 1 tbsp | 04582,04584,04053,04044 |
700 ml boiling water | 700 ml | 14411,14429 |
1 level tbsp plain flour | 1 tbsp | 20081,20581 |
100 g mature Cheddar, grated, plus extra to serve | 100 g | 01009 |
`;
