/** Words that carry no answer by themselves; the longest first, so that "it's" goes before "it". */
const FILLERS =
  /\b(?:fib(?:er|re)glass|vapou?r retarder|approximately|first of all|outside face|paint(?:ed)?|at present|insulation|priorities|somewhere|stud bays?|above all|cellulose|currently|important|behind|insulated|ourselves|room side|sheathing|thickness|category|cavities|existing|exposure|interior|lot line|suppose|believe|matters?|priority|probably|sheathed|standard|already|between|drywall|framing|maximum|perhaps|project|regular|roughly|outside|hoping|rather|really|little|afford|money|live|very|almost|approx|around|batts?|budget|cavity|stands|design|facing|finish|framed|height|inside|mainly|mostly|myself|nearly|normal|please|second|square|studs?|thanks|units?|walls?|about|basic|bays?|circa|could|doing|faced|first|frame|guess|hello|here|house|it'll|kinds|maybe|speed|spend|stand|thank|their|there|these|thick|think|those|usual|wants|we'll|we've|winds|would|area|away|been|crew|each|fine|from|good|have|high|home|i'll|i've|it's|just|kind|like|mean|most|need|next|okay|only|roof|site|size|some|tall|that|then|they|this|type|want|well|wide|will|wind|with|year|your|all|are|can|for|got|had|has|i'd|i'm|its|job|max|now|hmm?|umm?|uhm?|old|our|per|say|the|use|was|yes|you|an|as|at|be|by|ca|hi|in|is|it|me|my|of|ok|on|so|to|up|us|we|a|i)\b|[^\p{L}\p{N}]+/gu;

/** A clause's leftover without the words that carry nothing. */
export function withoutFillers(text: string): string {
  const bare = text.replace(FILLERS, ' ').replace(/\s+/g, ' ').trim();
  return /[\p{L}\p{N}]/u.test(bare) ? text.trim() : '';
}
