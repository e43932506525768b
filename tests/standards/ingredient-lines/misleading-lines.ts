/**
 * Lines as coaches write them, invented, each with what a careful reader takes from it (the form is that of
 * `lines.ts`): words that
 * mislead, kitchens of several countries. Before it was mended by: amount and unit 98.2 %, food 87.5 %, flags 99.4 %.
 */
export const MISLEADING_LINES = `
100 g mature reduced-fat cheddar | 100 g | 01260 |
60 g extra mature cheddar, grated | 60 g | 01009 |
1 can (14.5 oz) no-salt-added diced tomatoes | 14.5 oz | 11885 |
1 (14 oz) can fire-roasted tomatoes | 14 oz | 11885,11531 |
1 can (8 oz) tomato sauce | 8 oz | 11549 |
2 tablespoons tomato puree | 2 tbsp | 11546,11547 |
1 15-oz can pinto beans, drained | 15 oz | 16146,16145 |
2 cans white beans (15 oz each), rinsed | 30 oz | 16051 |
200 g cooked chicken breast, sliced | 200 g | 05747,05064,05065 |
300 g rotisserie chicken, skin removed | 300 g | 05013,05342,05345 |
500 g diced chicken thigh fillets | 500 g | 05096 |
1 kg chicken thighs, skin on and bone in | 1 kg | 05091 |
250 g turkey breast steaks | 250 g | 05219 |
6 slices deli turkey | 6 piece | 07081 |
12 oz flank steak, sliced against the grain | 12 oz | 13068 |
1.5 lb pork tenderloin | 1.5 lb | 10060 |
4 pork loin chops, fat trimmed (about 140 g each) | 4 piece =560 g | 10066,10024 |
4 rashers back bacon | 4 piece | 10130 |
100 g chorizo ring, peeled and diced | 100 g | 07019 |
200 g hot-smoked salmon, flaked | 200 g | 15179 |
1 tin sardines in tomato sauce (120 g) | 120 g | - |
1 tin (120 g) sardines in olive oil, drained | 120 g | 15088 |
2 sea bass fillets | 2 piece | - |
250 g cooked peeled cold-water prawns | 250 g | 15151,15271 |
4 medium eggs | 4 piece | 01123 |
2 eggs, separated | 2 piece | 01123 |
1 egg, beaten, to glaze | 1 piece | 01123 |
150 g liquid egg whites | 150 g | 01124 |
200 ml skim milk | 200 ml | 01085 |
1 cup fat-free milk | 1 cup | 01085 |
1 cup lowfat buttermilk | 1 cup | 01088 |
150 ml unsweetened oat milk | 150 ml | - |
500 ml unsweetened almond drink | 500 ml | 14091 |
3 tbsp half-fat crème fraîche | 3 tbsp | - |
2 tbsp soured cream | 2 tbsp | 01056 |
1/4 cup light sour cream | 0.25 cup | 01179 |
100 ml heavy cream | 100 ml | 01053 |
200 g low-fat ricotta | 200 g | 01037 |
150 g low fat plain yogurt | 150 g | 01117 |
100 g thick Greek yogurt, full fat | 100 g | 01293 |
30 g shaved Parmesan | 30 g | 01033,01032 |
50 g soft goat's cheese, crumbled | 50 g | 01159 |
1 ball mozzarella (125 g), drained and torn | 125 g | 01026,01028 |
1 block feta (200 g) | 200 g | 01019 |
160 g jasmine rice, uncooked weight | 160 g | 20044,20444 |
1 pouch (250 g) microwave brown rice | 250 g | 20037 |
250 g pouch of ready-cooked basmati rice | 250 g | 20045,20445,20049 |
100 g dry weight quinoa | 100 g | 20035 |
185 g cooked quinoa, cooled | 185 g | 20137 |
1 cup old-fashioned rolled oats | 1 cup | 08120 |
70 g quick oats | 70 g | 08120,08122 |
200 g giant couscous | 200 g | 20028 |
300 g fresh egg noodles | 300 g | 20109,20110,20093 |
200 g dried rice vermicelli | 200 g | 20133 |
250 g wholewheat spaghetti | 250 g | 20124 |
12 lasagne sheets | 12 piece | 20120 |
300 g fresh lasagne sheets | 300 g | 20093 |
4 seeded burger buns | 4 piece | 18350 |
2 large naans | 2 piece | 28307 |
2 slices of sourdough | 2 piece | 18029 |
100 g strong white bread flour | 100 g | 20083 |
120 g all purpose flour | 120 g | 20081,20581 |
100 g ground almonds | 100 g | 12061 |
1 white onion, thinly sliced | 1 piece | 11282 |
3 banana shallots, finely chopped | 3 piece | 11677 |
1 bunch scallions, thinly sliced | 1 piece | 11291 |
6 cloves of garlic, whole and unpeeled | 6 piece | 11215 |
1 bulb garlic, halved | 1 piece | 11215 |
1 tbsp minced garlic | 1 tbsp | 11215 |
1 tbsp minced ginger | 1 tbsp | 11216 |
1-inch piece of ginger, grated | ? | 11216 |
1 carrot, coarsely grated | 1 piece | 11124 |
200 g baby carrots | 200 g | 11960 |
1 head of cauliflower (600 g florets) | 600 g | 11135 |
1 small savoy cabbage, shredded | 1 piece | 11109 |
1/2 Chinese cabbage, shredded | 0.5 piece | 11116 |
200 g Swiss chard, leaves and stalks separated | 200 g | 11147 |
1 bag (200 g) washed baby leaf spinach | 200 g | 11457 |
1 little gem lettuce | 1 piece | 11251 |
1/2 iceberg lettuce, shredded | 0.5 piece | 11252 |
1 English cucumber, deseeded and diced | 1 piece | 11205 |
2 beef tomatoes, sliced | 2 piece | 11529 |
300 g baby plum tomatoes | 300 g | 11529 |
1 yellow bell pepper, in strips | 1 piece | 11951 |
3 mixed peppers, sliced | 3 piece | 11821 |
2 bird's eye chillies, sliced | 2 piece | 11819,11670 |
1 fresh jalapeno, seeded | 1 piece | 11979 |
2 medium courgettes, in half moons | 2 piece | 11477 |
8 oz cremini mushrooms | 8 oz | 11266 |
2 large portobello mushrooms | 2 piece | 11265 |
20 g dried shiitake mushrooms | 20 g | - |
4 baking potatoes (250 g each) | 4 piece =1000 g | 11353,11352 |
500 g King Edward potatoes, peeled | 500 g | 11353,11352 |
2 yams, cubed | 2 piece | - |
400 g pumpkin, peeled and diced | 400 g | - |
2 cooked beetroot (vacuum-packed), grated | 2 piece | 11081,11084 |
250 g pack cooked beetroot | 250 g | 11081 |
120 g asparagus tips | 120 g | 11011 |
150 g snow peas | 150 g | 11300 |
1 cup frozen corn kernels, thawed | 1 cup | 11178 |
2 ears corn, kernels cut off | 2 piece | 11167 |
100 g tinned sweetcorn | 100 g | 11172 |
150 g beansprouts | 150 g | 11043 |
40 g stoned black olives | 40 g | 09193 |
2 tbsp pickled jalapeños, chopped | 2 tbsp | 11632 |
1 small pink lady apple, cored | 1 piece | 09003 |
1 large pear | 1 piece | 09252 |
200 g frozen mango chunks | 200 g | 09176 |
100 g fresh raspberries | 100 g | 09302 |
100 g frozen mixed berries | 100 g | - |
2 tbsp sultanas | 2 tbsp | 09298 |
6 pitted prunes, chopped | 6 piece | 09291 |
20 g pine nuts, toasted | 20 g | 12147 |
30 g pecans | 30 g | 12142 |
25 g unsalted cashews, roasted | 25 g | 12085,12087 |
1 tbsp crunchy peanut butter | 1 tbsp | 16098,16398 |
1 tbsp natural almond butter | 1 tbsp | 12195 |
2 tbsp milled flaxseed | 2 tbsp | 12220 |
400 ml can light coconut milk | 400 ml | - |
1 tbsp sunflower oil | 1 tbsp | 04584 |
1 tsp toasted sesame oil | 1 tsp | 04058 |
1 tbsp canola oil | 1 tbsp | 04582 |
1 tbsp red wine vinegar | 1 tbsp | 02068 |
1 tsp white wine vinegar | 1 tsp | 02068 |
1 tbsp mirin | 1 tbsp | - |
1 tbsp oyster sauce | 1 tbsp | 06176 |
1 tbsp sweet chilli sauce | 1 tbsp | - |
2 tbsp tomato ketchup | 2 tbsp | 11935 |
60 g reduced-sugar ketchup | 60 g | - |
1 tbsp light mayonnaise | 1 tbsp | 04641 |
500 ml beef stock (from a cube) | 500 ml | 06008 |
2 cups reduced-sodium chicken broth | 2 cup | 06183 |
1 cube vegetable stock | 1 piece | - |
1 tsp onion granules | 1 tsp | 02020,02026 |
2 tsp sweet paprika | 2 tsp | 02028 |
1/2 teaspoon hot smoked paprika | 0.5 tsp | 02028 |
1 tsp turmeric powder | 1 tsp | 02043 |
1 tsp fennel seeds, crushed | 1 tsp | 02018 |
1/4 tsp freshly grated nutmeg | 0.25 tsp | 02025 |
1 star anise | 1 piece | - |
2 tsp Italian seasoning | 2 tsp | 02027 |
1 tbsp fajita seasoning | 1 tbsp | 02075 |
15 g fresh dill, chopped | 15 g | 02045 |
10 g chives, snipped | 10 g | 11156 |
1 tbsp chopped fresh rosemary | 1 tbsp | 02063 |
1 tsp rosemary, dried | 1 tsp | 02036 |
10 basil leaves, torn | 10 piece | 02044 |
pinch of salt | ? | 02047 |
1 good pinch sea salt flakes | 1 pinch | 02047 |
kosher salt and pepper, to taste | taste | 02047 | taste
a squeeze of lemon | ? | 09152,09150 |
1 lemon, cut into wedges, to serve | 1 piece | 09150 |
1 tbsp clear honey | 1 tbsp | 19296 |
1 tbsp demerara sugar | 1 tbsp | 19334 |
1 tbsp erythritol | 1 tbsp | - |
20 g unsweetened cocoa powder | 20 g | 19165 |
50 g milk chocolate chips | 50 g | - |
2 tsp instant yeast | 2 tsp | 18375 |
ice cubes, to serve | ? | 14429 |
250ml cold water | 250 ml | 14429 |
1 bay leaf (optional) | 1 piece | 02004 | optional
optional: 20 g toasted pine nuts | 20 g | 12147 | optional
30 g feta or vegan alternative (optional) | 30 g | 01019 | optional,swap
200 g prawns or 200 g firm tofu | 200 g | 15270,15149 | swap
1 shallot or ½ small onion, diced | 1 piece | 11677 | swap
100 g kale or spinach | 100 g | 11233 | swap
1 tbsp fresh or 1 tsp dried oregano | 1 tbsp | - | swap
2 tbsp chopped fresh parsley (or coriander) | 2 tbsp | 11297 | swap
`;
