/**
 * Lines as coaches write them, invented, each with what a careful reader takes from it (the form is that of
 * `lines.ts`), written after the reader was mended by all others. Measured once, unseen: amount and unit
 * 98.9 %, food 94.4 %, flags 100 %. Three names of foods were mended by it since.
 */
export const UNSEEN_LINES = `
750 g chicken thigh fillets, fat trimmed | 750 g | 05096 |
2 tbsp low-fat natural yoghurt | 2 tbsp | 01117 |
1 cup jasmine rice, rinsed | 1 cup | 20044,20444 |
400g tin cannellini beans, drained | 400 g | 16051 |
3 sticks of celery, finely chopped | 3 piece | 11143 |
1 large carrot, peeled and grated | 1 piece | 11124 |
1 thumb of ginger, grated | 1 piece | 11216 |
600 g lean lamb leg steaks, diced | 600 g | 17013 |
2 lb boneless pork shoulder, cut in chunks | 2 lb | 10072 |
150 g smoked back bacon, chopped | 150 g | 10130 |
1 tsp crushed fennel seeds | 1 tsp | 02018 |
1½ tsp ground turmeric | 1.5 tsp | 02043 |
400 ml chicken stock (low salt) | 400 ml | 06183,06194 |
1 tbsp tamari or light soy sauce | 1 tbsp | 16124 | swap
80 g couscous, dry weight | 80 g | 20028 |
500 g frozen mixed vegetables | 500 g | 11583 |
200 g tenderstem, halved | 200 g | 11090 |
120g reduced fat feta | 120 g | - |
1 x 125 g ball light mozzarella | 125 g | 01028 |
45 g freshly grated Parmesan | 45 g | 01032,01033 |
6 tbsp 0% fat Greek-style yogurt | 6 tbsp | 01256 |
2 medium baking potatoes | 2 piece | 11353,11352 |
300 g baby new potatoes, halved | 300 g | 11352 |
1 small celeriac, peeled and cubed | 1 piece | - |
2 tins (400 g) green lentils, drained | 800 g | 16070 |
125 g dried green lentils | 125 g | 16069 |
1 red onion, cut into wedges | 1 piece | 11282 |
½ red onion, finely sliced | 0.5 piece | 11282 |
100 g Savoy cabbage, finely shredded | 100 g | 11109 |
1 fennel bulb, trimmed and sliced | 1 piece | 11957 |
2 tbsp flat leaf parsley, roughly chopped | 2 tbsp | 11297 |
1 tbsp oregano leaves, dried | 1 tbsp | 02027 |
2 cloves garlic, thinly sliced | 2 piece | 11215 |
1 whole chicken (about 1.6 kg) | 1 piece =1600 g | 05006 |
240 g cooked chicken, shredded | 240 g | 05013 |
2 x 120 g tuna steaks | 240 g | 15127 |
1 can (5 oz) albacore tuna, drained | 5 oz | 15126 |
400 g haddock fillet, skinned | 400 g | 15015 |
200 g cooked mussels | 200 g | - |
4 large eggs, beaten with 1 tbsp water | 4 piece | 01123 |
1/3 cup liquid egg whites | 1/3 cup | 01124 |
250 ml 1% milk | 250 ml | 01082 |
200 g full-fat cream cheese | 200 g | 01017 |
40 g salted butter, softened | 40 g | 01001 |
1 tbsp ghee | 1 tbsp | - |
1 tbsp rapeseed oil, plus 1 tsp | 1 tbsp | 04582 |
75 g wholemeal plain flour | 75 g | 20080 |
2 tbsp corn flour | 2 tbsp | 20027 |
30 g dried breadcrumbs | 30 g | 18079 |
2 wholewheat pittas, warmed | 2 piece | 18042 |
8 small corn tortillas, warmed | 8 piece | 18363 |
4 brioche buns | 4 piece | - |
250 g soba noodles | 250 g | 20114 |
500 g fresh tagliatelle | 500 g | 20093 |
280 g brown rice pasta | 280 g | - |
1 bunch asparagus (about 250 g) | 250 g | 11011 |
250 g vine-ripened cherry tomatoes | 250 g | 11529 |
1 jar (290 g) sun-dried tomatoes in oil, drained | 290 g | 11956 |
1 tin (400 g) chopped tomatoes with garlic | 400 g | 11885,11531 |
700 g jar passata | 700 g | 11547 |
1 tbsp chipotle paste | 1 tbsp | - |
2 chipotle chillies in adobo, chopped | 2 piece | - |
1 green chilli, deseeded and sliced | 1 piece | 11670 |
a handful of fresh mint leaves | ? | - |
1 lime, cut into wedges (optional) | 1 piece | 09159 | optional
2 oranges, segmented | 2 piece | 09200 |
150 g strawberries, hulled and quartered | 150 g | 09316 |
2 ripe mangoes, diced | 2 piece | 09176 |
1/2 small pineapple, peeled and cored | 0.5 piece | 09266 |
50 g dried apricots, chopped | 50 g | - |
25 g sultanas or raisins | 25 g | 09298 | swap
20 g chopped hazelnuts | 20 g | 12120 |
15 g pumpkin and sunflower seeds | 15 g | 12014,12036,12016 |
1 tbsp smooth almond butter | 1 tbsp | 12195 |
2 tsp Dijon or wholegrain mustard | 2 tsp | 02046 | swap
1 tbsp barbecue sauce, reduced sugar | 1 tbsp | 06150 |
2 tbsp hoisin sauce | 2 tbsp | 06175 |
30 ml maple syrup | 30 ml | 19353 |
1 tbsp dark brown sugar | 1 tbsp | 19334 |
1 tsp stevia | 1 tsp | 19918 |
10 g cacao powder | 10 g | 19165 |
1 tsp vanilla essence | 1 tsp | 02050 |
1 tsp bicarb | 1 tsp | 18372 |
25 g vegan vanilla protein powder | 25 g | - |
250 g plain firm tofu, pressed | 250 g | 16126 |
1 vegetable stock pot | 1 piece | - |
500 ml hot vegetable stock | 500 ml | 06700 |
flaky sea salt, to serve | ? | 02047 |
pepper | ? | 02030 |
200 ml dry white wine | 200 ml | 14106 |
`;
