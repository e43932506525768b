/**
 * Lines as coaches write them, invented, each with what a careful reader takes from it (the form is that of
 * `lines.ts`): the set that the
 * reader was mended by in November 2026. Before: amount and unit 97.3 %, food 93.2 %, flags 100 %.
 */
export const FRESH_LINES = `
200 g fat-free cottage cheese | 200 g | 01016 |
500 g 0% Greek yoghurt | 500 g | 01256 |
170 g plain nonfat Greek yogurt | 170 g | 01256 |
1 cup 2% milk | 1 cup | 01079 |
250 ml semi-skimmed milk | 250 ml | 01079 |
200 ml milk | 200 ml | 01077 |
200 ml whole milk, warmed | 200 ml | 01077 |
2 tbsp dried skimmed milk powder | 2 tbsp | - |
150 ml low-sodium chicken broth | 150 ml | 06183 |
1 litre reduced-salt vegetable stock | 1 l | - |
2 tbsp low-sodium soy sauce | 2 tbsp | 16424 |
1 tbsp dark soy sauce | 1 tbsp | 16123 |
1 tsp light soy | 1 tsp | 16123 |
300 g rice | 300 g | 20044,20444 |
1 1/2 cups long grain white rice, rinsed | 1.5 cup | 20044,20444 |
250 g cooked white rice, cold | 250 g | 20045,20445 |
200 g leftover rice | 200 g | 20045,20445 |
180 g wholegrain rice | 180 g | 20036 |
75 g sushi rice | 75 g | 20052 |
2 tbsp oil | 2 tbsp | 04582 |
1 tsp vegetable oil, for the pan | 1 tsp | 04582 |
15 ml extra-virgin olive oil | 15 ml | 04053 |
1 tbsp light olive oil | 1 tbsp | 04053 |
Oil spray | ? | 04582,04053,04044 |
400 g chicken | 400 g | 05011,05062 |
650 g chicken breasts, trimmed and butterflied | 650 g | 05062 |
4 skinless boneless chicken breasts (about 170 g each) | 4 piece =680 g | 05062 |
8 chicken drumsticks, skin on (1 kg) | 8 piece =1000 g | 05066 |
500 g leftover roast chicken, shredded | 500 g | 05013,05009 |
1.2 kg bone-in chicken thighs | 1.2 kg | 05091 |
500 g lean beef mince | 500 g | 23562,23557 |
1 lb 85/15 ground beef | 1 lb | 23567 |
1 lb ground beef (93% lean) | 1 lb | 23472 |
400 g 5% fat minced beef | 400 g | 23557 |
500 g ground turkey | 500 g | 05665,05305 |
450 g pork mince | 450 g | 10972,10219 |
800 g pork shoulder, cut into 3 cm cubes | 800 g | 10072 |
6 pork sausages (400 g) | 6 piece =400 g | 07063 |
80 g smoked streaky bacon, diced | 80 g | 10123 |
100 g cooked ham, chopped | 100 g | 07028,10136 |
700 g braising steak, in chunks | 700 g | 23354 |
2 rump steaks, 200 g each | 2 piece =400 g | 23611 |
600 g boneless leg of lamb, diced | 600 g | 17013 |
2 tins tuna in spring water (145 g each), drained | 290 g | 15121 |
1 tin (200 g) tuna in olive oil, drained | 200 g | 15119 |
4 skin-on salmon fillets (130 g each) | 4 piece =520 g | 15236,15076,15085 |
300 g raw king prawns, peeled | 300 g | 15270,15149 |
150 g cooked prawns | 150 g | 15271,15151 |
2 fillets of haddock, 150g each | 2 piece =300 g | 15015 |
400 g firm white fish, in chunks | 400 g | 15015 |
5 anchovy fillets, chopped | 5 piece | 15002 |
3 large eggs | 3 piece | 01123 |
2 large free-range eggs, lightly beaten | 2 piece | 01123 |
200 g egg whites (carton) | 200 g | 01124 |
1 egg yolk | 1 piece | 01125 |
2 hard-boiled eggs, quartered | 2 piece | 01129 |
30 g unsalted butter, melted and cooled | 30 g | 01145 |
1 knob of butter | 1 piece | 01001,01145 |
50 g light cream cheese | 50 g | - |
40 g Parmesan, finely grated | 40 g | 01033,01032 |
25 g freshly grated parmesan | 25 g | 01032,01033 |
150 g reduced-fat mature cheddar, grated | 150 g | 01260 |
60 g crumbled feta cheese | 60 g | 01019 |
120 g grated low-moisture mozzarella | 120 g | 01029 |
1 x 400 g tin kidney beans, drained and rinsed | 400 g | 16335,16145,16029 |
2 x 400g cans chickpeas in water, drained | 800 g | 16359,16358,16058 |
240 g drained chickpeas | 240 g | 16359,16358 |
1 can (15.5 oz) low-sodium black beans, drained | 15.5 oz | 16015,16018 |
150 g dried chickpeas, soaked overnight | 150 g | 16056 |
100 g dried red lentils, rinsed | 100 g | 16144 |
250 g ready-cooked puy lentils | 250 g | 16070 |
200 g frozen shelled edamame | 200 g | 11211 |
400 g extra-firm tofu, pressed and cubed | 400 g | 16159 |
200 g silken tofu | 200 g | 16127 |
100 g smooth peanut butter (no added sugar or salt) | 100 g | 16398,16098 |
50 g porridge oats | 50 g | 08120 |
300 g wholewheat penne | 300 g | 20124 |
400 g spaghetti, uncooked | 400 g | 20120 |
160 g dry orzo | 160 g | 20120 |
2 nests medium egg noodles (120 g) | 2 piece =120 g | 20109 |
4 wholemeal wraps | 4 piece | 28295 |
6 (8-inch) flour tortillas | 6 piece | 18364,18970 |
50 g panko breadcrumbs | 50 g | 18079 |
2 slices wholemeal bread, torn | 2 piece | 18075 |
150 g self-raising flour | 150 g | - |
1 heaped tbsp plain flour | 1 tbsp | 20081,20581 |
2 level tsp cornstarch | 2 tsp | 20027 |
150 g couscous | 150 g | 20028 |
1 medium onion, finely diced | 1 piece | 11282 |
2 red onions, thinly sliced | 2 piece | 11282 |
1 bunch of spring onions, white and green parts separated | 1 piece | 11291 |
4 fat garlic cloves, grated | 4 piece | 11215 |
2 tsp garlic paste | 2 tsp | - |
a thumb-sized piece of ginger, peeled and grated | ? | 11216 |
20 g fresh root ginger, grated | 20 g | 11216 |
2 cm piece fresh ginger | ? | 11216 |
300 g carrots, peeled & cut into batons | 300 g | 11124 |
2 sticks celery, sliced | 2 piece | 11143 |
1 large head of broccoli, in florets | 1 piece | 11090 |
350 g frozen broccoli florets | 350 g | 11092 |
½ cauliflower, grated into rice | 0.5 piece | 11135 |
1 red and 1 yellow pepper, sliced | 1 piece | 11821 |
2 bell peppers (any colour), diced | 2 piece | 11821,11333,11951 |
1 green bell pepper | 1 piece | 11333 |
1 small red chilli, finely chopped | 1 piece | 11819 |
200 g fresh baby spinach, washed | 200 g | 11457 |
300 g frozen spinach, thawed and squeezed | 300 g | 11463 |
150 g shredded red cabbage | 150 g | 11112 |
100 g kale, stalks removed | 100 g | 11233 |
1 romaine lettuce, shredded | 1 piece | 11251 |
3 ripe tomatoes, chopped | 3 piece | 11529 |
200 g cherry tomatoes, halved | 200 g | 11529 |
2 x 400 g tins chopped tomatoes, drained | 800 g | 11885,11531 |
1 400g tin plum tomatoes | 400 g | 11885,11531 |
500 g passata | 500 g | 11547 |
2 tbsp tomato purée | 2 tbsp | 11546 |
3 tbsp tomato paste | 3 tbsp | 11546 |
60 g sun-dried tomatoes, chopped | 60 g | 11955,11956 |
2 zucchini, spiralized | 2 piece | 11477 |
1 large eggplant, cubed | 1 piece | 11209 |
250 g button mushrooms, quartered | 250 g | 11260 |
750 g new potatoes, halved | 750 g | 11352 |
1 kg Maris Piper potatoes, unpeeled | 1 kg | 11352,11353 |
600 g sweet potato, peeled, in 2 cm dice | 600 g | 11507 |
1 butternut squash (about 1 kg), peeled and deseeded | 1 piece =1000 g | 11485 |
150 g green beans, topped and tailed | 150 g | 11052 |
100 g sugar snap peas | 100 g | 11300 |
200 g frozen peas | 200 g | 11312 |
1 tin (326 g) sweetcorn in water, drained | 326 g | 11172 |
2 corn cobs | 2 piece | 11167 |
1 ripe avocado, mashed | 1 piece | 09037 |
50 g pitted kalamata olives, halved | 50 g | 09193 |
1 tbsp capers, rinsed | 1 tbsp | 02054 |
juice of 1 lemon | 1 piece | 09152,09150 |
zest and juice of 2 limes | 2 piece | 09160,09159 |
1 tbsp freshly squeezed lime juice | 1 tbsp | 09160 |
grated zest of half an orange | 0.5 piece | 09216,09200 |
1 overripe banana (120 g peeled) | 1 piece =120 g | 09040 |
100 g frozen blueberries | 100 g | 09054 |
1 Granny Smith apple, grated | 1 piece | 09502 |
60 g medjool dates, pitted | 60 g | 09421 |
30 g dried cranberries | 30 g | 09079 |
40 g walnut halves, roughly chopped | 40 g | 12155 |
30 g toasted flaked almonds | 30 g | 12063,12061 |
1 tbsp toasted sesame seeds | 1 tbsp | 12023 |
1 tbsp chia seeds | 1 tbsp | 12006 |
1 tin (400 ml) full-fat coconut milk | 400 ml | 12118 |
200 ml light coconut milk | 200 ml | - |
1 tbsp rice vinegar | 1 tbsp | 02053 |
2 tbsp apple cider vinegar | 2 tbsp | 02048 |
1 tsp Dijon mustard | 1 tsp | 02046 |
1 heaped tsp wholegrain mustard | 1 tsp | 02046 |
2 tbsp light mayo | 2 tbsp | 04641 |
1 tbsp hot sauce, or more to taste | 1 tbsp | 06168 |
2 tbsp gochujang | 2 tbsp | - |
1 tbsp harissa paste | 1 tbsp | - |
1 tsp Worcestershire sauce | 1 tsp | 06971 |
4 tbsp shop-bought green pesto | 4 tbsp | 06626 |
1 low-salt chicken stock cube | 1 piece | - |
1 chicken stock cube, crumbled | 1 piece | 06081 |
600 ml vegetable stock made from 1 cube | 600 ml | 06700 |
1 tsp ground cumin | 1 tsp | 02014 |
2 tsp cumin seeds, toasted | 2 tsp | 02014 |
1 tsp ground coriander | 1 tsp | 02013 |
small bunch of coriander, leaves picked | ? | 11165 |
a handful of flat-leaf parsley, chopped | ? | 11297 |
1 tsp dried thyme | 1 tsp | 02042 |
4 sprigs fresh thyme | 4 piece | 02049 |
2 bay leaves | 2 piece | 02004 |
1 tsp sweet smoked paprika | 1 tsp | 02028 |
½ tsp ground black pepper | 0.5 tsp | 02030 |
1/2 tsp red pepper flakes | 0.5 tsp | 02031 |
1 tsp fine sea salt | 1 tsp | 02047 |
Salt and freshly ground black pepper | ? | 02047,02030 |
salt, to taste | taste | 02047 | taste
freshly ground black pepper, to taste | taste | 02030 | taste
1 cinnamon stick | 1 piece | 02010 |
1 tsp mixed herbs | 1 tsp | 02027 |
1 tsp garam masala | 1 tsp | 02015 |
1 tbsp runny honey (optional) | 1 tbsp | 19296 | optional
2 tsp caster sugar | 2 tsp | 19335 |
1 tbsp light brown soft sugar | 1 tbsp | 19334 |
30 g 85% dark chocolate, chopped | 30 g | 19904 |
1 tsp vanilla bean paste | 1 tsp | - |
2 tsp baking powder | 2 tsp | 18369 |
1 scoop (30 g) whey protein powder | 30 g | 14066,14058 |
2 scoops vanilla protein powder, 60 g | 60 g | 14066,14058 |
100 ml water | 100 ml | 14429 |
250 g quinoa, cooked and cooled | 250 g | 20035,20137 |
200 g Greek-style yoghurt (or dairy-free) | 200 g | 01293 |
0,5 kg courgettes | 0.5 kg | 11477 |
1,5 l water | 1.5 l | 14429 |
2½ tbsp soy sauce or tamari | 2.5 tbsp | 16123 | swap
350 g (12 oz) chestnut mushrooms, sliced | 350 g | 11266 |
1/2 lb asparagus, woody ends snapped off | 0.5 lb | 11011 |
1 lb 2 oz new potatoes | 1 1/8 lb | 11352 |
120 g (about 4 oz) rice noodles | 120 g | 20133 |
3 tablespoons (45 ml) olive oil | 45 ml | 04053 |
1 cup (240 ml) unsweetened almond milk | 240 ml | 14091 |
¾ cup/180 ml single cream | 0.75 cup | - |
1 pot (150 g) low-fat natural yoghurt | 150 g | 01117 |
1 pack (250 g) halloumi, sliced | 250 g | - |
1 bag (300 g) stir-fry vegetables | 300 g | - |
2 handfuls rocket | 2 piece | 11959 |
1 punnet cherry tomatoes (250 g) | 250 g | 11529 |
8 slices of prosciutto | 8 piece | - |
12 black olives | 12 piece | 09193 |
1 jar roasted red peppers (340 g drained) | 340 g | - |
1 dsp cornflour | 2 tsp | 20027 |
a splash of milk | ? | 01077 |
drizzle of olive oil | ? | 04053 |
300g/10½oz tenderstem broccoli | 300 g | 11090 |
2 heaped tablespoons 5% fat Greek yogurt | 2 tbsp | 01293 |
1 x 227 g tin pineapple chunks in juice | 227 g | 09268 |
500 g chicken mince (or turkey mince) | 500 g | 05332 | swap
100 g mixed salad leaves | 100 g | 11251 |
75 g raw cashews, soaked | 75 g | 12087 |
30 g roasted salted peanuts | 30 g | 16090,16390 |
4 medium vine tomatoes (400 g), quartered | 4 piece =400 g | 11529 |
150 g mangetout, sliced lengthways | 150 g | 11300 |
1 tbsp miso | 1 tbsp | 16112 |
80 g dry brown rice (per 4 portions) | 80 g | 20036 |
`;
