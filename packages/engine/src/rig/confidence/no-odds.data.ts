/** Why some promises have no odds, by the beginning of their id; the first that fits is told. */
export const NO_ODDS: readonly { readonly id: string; readonly why: string }[] = [
  { id: 'price', why: 'the price is the sum of the bill, and stands as quoted' },
  { id: 'ready', why: 'lead times are the suppliers’ word: nobody has counted yet how often they are late' },
  { id: 'wish:', why: 'the part is as wished or it is not' },
  { id: 'plumbing', why: 'a joint can be made with parts of the catalogue or it cannot' },
  { id: 'materials:', why: 'a yes or no from tables of what stands what, and from what people decide' },
  { id: 'rinse:flush', why: 'a yes or no from the liquids, and from what people decide' },
  { id: 'rinse:backflow', why: 'a yes or no: something stands between mix and water or it does not' },
  { id: 'rinse:plan', why: 'at the yard there is as much water as it takes' },
  { id: 'rinse:winter', why: 'a yes or no: it is drained and blown out or it is not' },
  { id: 'reel', why: 'it follows from sizes: measure hose and drum before it is built' },
  { id: 'structure:fit', why: 'it follows from sizes: measure parts and deck before it is built' },
  { id: 'pattern:width:', why: 'it follows from how many nozzles there are and how far apart they stand' },
  {
    id: 'pattern:even:',
    why: 'it is reckoned with ideal nozzles, all alike, so that odds would flatter it: catch a real pass in cups',
  },
  { id: 'pattern:rows:', why: 'rate and rows are both as the brief says' },
  { id: 'weight:brakes', why: 'a yes or no from the rules that it names' },
  { id: 'weight:', why: 'it can be missed on either side, too light or too heavy: weigh the rig' },
];

/** Of a promise that is unknown itself. */
export const NOT_KNOWN = 'what is missing must be known or decided first';
/** Of any other. */
export const NOT_DRAWN = 'nothing that it is reckoned from has a tolerance';
