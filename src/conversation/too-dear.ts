const LEAD_IN = '(?:(?:so|and|but|oh|well|hm+|sorry|no),? )?';
const IT = '(?:it|that|this)';
const THE_WALL = '(?:(?:the |that |this )?(?:price|cost|total|wall|first choice|whole thing)|it|that|this)';
const FOR_US = '(?: for (?:me|us))?';
const MUCH = 'much(?: money)?';
const BY_FAR = '(?:still |just |way |far |much |well |a (?:bit|little) )*';
const TOO_HIGH = `too (?:high|expensive|dear|costly|pricey|spendy|steep|rich|${MUCH})`;
const OVER_THE_BUDGET = '(?:over|above|beyond|more than) (?:(?:my|our|the) )?(?:budget|means|limit)';
const A_LITTLE = '(?: a bit| a little)?';
const ANOTHER = '(?: (?:one|wall|way|option)s?)';
const DEAR = '(?:expensive|dear)';

/** It costs too much, said of the wall or of nothing. */
const TOO_MUCH: readonly string[] = [
  `${THE_WALL}(?:'?s| is)? ${BY_FAR}(?:${TOO_HIGH}|${OVER_THE_BUDGET})${FOR_US}`,
  `(?:way |much |far )?(?:too (?:expensive|dear|costly|pricey|spendy|steep|${MUCH})|over budget)${FOR_US}`,
  `(?:i|we) (?:really )?(?:can'?t|cannot|can not) (?:afford|pay)(?: for)? (?:it|that|this|that much|so much)`,
  `${IT} costs? (?:way |far )?too much`,
  `${IT}(?:'?s| is) a lot(?: of money)?`,
];

/** Something cheaper is wanted. */
const CHEAPER: readonly string[] = [
  `(?:can|could) (?:(?:i|we|you) (?:make|get|build|do|have|find)|${IT} be (?:made|done|built))(?: (?:it|this|that|the wall|something|anything|one))?(?: any| a bit| a little)? cheaper(?: (?:one|wall))?`,
  `how (?:can|could|do|would) (?:i|we|you) (?:(?:make|get|build|do) (?:it|this|that|the wall)${A_LITTLE} cheaper|(?:bring|get) the (?:price|cost) down|save(?: some)? money)`,
  `(?:(?:is|are) there )?(?:anything|something|a|any)(?: wall)?s? cheaper${ANOTHER}?`,
  '(?:is there )?a cheaper (?:one|wall|way|option)',
  `(?:make|do) ${IT} cheaper`,
  `(?:(?:show|give|tell|find) (?:me|us) )?(?:something|a|the|any)?(?: ?one| wall)? ?cheaper${ANOTHER}`,
];

/** Where the money goes. */
const WHERE_IT_GOES: readonly string[] = [
  `what (?:costs (?:the )?most|makes ${IT} (?:so )?${DEAR})`,
  `why is ${IT} so ${DEAR}`,
  'where (?:can|could) (?:i|we) save(?: money)?',
];

/** "Too expensive" and its kin, as a whole line. */
export const TOO_DEAR = new RegExp(
  `^${LEAD_IN}(?:${[...TOO_MUCH, ...CHEAPER, ...WHERE_IT_GOES].join('|')})\\??$`,
);
