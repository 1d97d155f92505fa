/** What owners ask in a few words, and what is answered shortly. */
export const SHORT_QUESTION_KINDS = [
  'screws',
  'rot',
  'cracks',
  'lasting',
  'safe',
  'own-hands',
  'next-step',
  'none-pass',
  'meaning',
] as const;
export type ShortQuestion = (typeof SHORT_QUESTION_KINDS)[number];

const LEAD = '(?:(?:so|and|but|ok|okay|well),? )*';
const IT = '(?:it|that|this|they|the (?:wall|stucco|cladding|plaster|house|plan|first choice|whole thing))';
const WE = '(?:i|we|you|one)';
const SCREWS = '(?:screws?|fasteners?|nails?|lags?|lag (?:screws?|bolts?)|bolts?)';
const PASSES = '(?:pass(?:es)?|works?|fits?|make it)';

const whole = (...ways: readonly string[]) => new RegExp(`^${LEAD}(?:${ways.join('|')})[?!.]*$`);

/** The short questions and the ways to ask for the total. */
export const SHORT_QUESTIONS: readonly {
  readonly kind: ShortQuestion | 'affordable';
  readonly pattern: RegExp;
}[] = [
  {
    kind: 'affordable',
    pattern: whole(
      `how much(?: money)?(?: (?:is|for) (?:${IT}|all of it))?(?: (?:in (?:all|total)|altogether|all together))?`,
      `(?:what(?:'?s| is| will be| would be)|whats) the (?:total|whole|final|full)(?: (?:cost|price|bill|amount))?(?: (?:going to be|gonna be|be|in the end|in all))?`,
      `what(?:'?s| is| will| would) (?:${IT} |all of it |it all )?(?:going to |gonna )?cost(?: (?:me|us|in the end|in all|altogether|all together|in total))*`,
      `how much (?:will|would|does|is|am i|are we) .{0,30}(?:cost|pay(?:ing)?|spend(?:ing)?)(?: (?:for ${IT}|in (?:all|total)))*`,
    ),
  },
  {
    kind: 'screws',
    pattern: whole(
      `(?:how many|how long|how far apart|how close|what|which|what (?:size|length|kind|sort|type)(?: of)?|how (?:big|thick))(?: (?:do|are|should|must))?(?: the)? ${SCREWS}(?: .{0,30})?`,
      `how (?:long|far apart|many|close|big|thick) (?:are|do|should|must) (?:the |my )?${SCREWS}(?: .{0,20})?`,
      `(?:(?:what(?:'?s| is)|show(?: me)?|give me|tell me) )?(?:the )?(?:fastening|fastener|screw|nailing)s? (?:schedule|spacing|length|list|count|pattern|size|plan)s?`,
      `(?:what(?:'?s| is) )?the spacing of the ${SCREWS}`,
      `how (?:do ${WE}|is ${IT}|is the cladding) (?:fasten|attach|hang|screw|fix)(?:ed)?(?: ${IT})?(?: (?:on|up|to the (?:wall|studs)))?`,
    ),
  },
  {
    kind: 'rot',
    pattern: whole(
      `(?:will|would|can|could|does|is) ${IT} (?:going to |ever )?(?:rot|mold|mould|get (?:wet|damp|moldy|mouldy)|(?:trap|hold|catch) (?:water|moisture|damp)|leak|dry(?: out)?|sweat|stay dry)(?: (?:out|inside|behind it))?`,
      `(?:will|would|is|can) (?:there|i|we) (?:be |have |get )?(?:any )?(?:rot|mold|mould|damp|condensation|a moisture problem|moisture problems)`,
      `is ${IT} safe (?:from|against) (?:moisture|water|rot|mold|mould|damp|rain)`,
      '(?:what about|how about) (?:rot|mold|mould|moisture|damp|condensation)',
    ),
  },
  {
    kind: 'cracks',
    pattern: whole(
      `(?:will|would|can|could|does) ${IT} (?:ever )?crack`,
      `(?:will|would|can) (?:there|i|we) (?:be |have |get |see )?(?:any )?cracks?`,
      '(?:what about|how about) crack(?:s|ing)',
    ),
  },
  {
    kind: 'lasting',
    pattern: whole(
      `how (?:long|many years) (?:will|does|would|can|do|should) ${IT} (?:last|hold(?: up)?|live|keep|stand)`,
      `how (?:durable|long[- ]lasting|lasting) is ${IT}`,
      `(?:what(?:'?s| is) )?(?:the |its )?(?:service life|life ?span|life expectancy|lifetime)(?: of ${IT})?`,
      `will ${IT} (?:last|hold up)`,
    ),
  },
  {
    kind: 'safe',
    pattern: whole(
      `is ${IT} (?:really )?(?:safe|dangerous)(?: to build)?`,
      `how (?:safe|dangerous|risky) is ${IT}`,
      'is (?:there )?any(?:thing)? (?:danger|dangerous|unsafe)(?: (?:about|in) it)?',
    ),
  },
  {
    kind: 'own-hands',
    pattern: whole(
      `(?:can|could|should|may) ${WE} (?:really |all )?(?:build|do|make|install|put up) (?:${IT}|all of it|some of it)(?: all)? (?:my|our|your|one)(?:self|selves)`,
      `is ${IT} (?:a )?(?:diy|do[- ]it[- ]yourself)(?: (?:job|project))?`,
      `is ${IT} something (?:that )?${WE} can (?:do|build)(?: (?:my|our)(?:self|selves))?`,
      'can (?:a )?(?:homeowners?|beginners?|amateurs?) (?:do|build) (?:it|this|that)',
    ),
  },
  {
    kind: 'next-step',
    pattern: whole(
      `what (?:should|do|must|can) ${WE} (?:have to |need to )?do(?: (?:now|next|first|then|with (?:it|this|that)))*`,
      "(?:now what|what now|what next|what(?:'?s| is) next|what comes next|where do (?:i|we) start|next steps?)",
    ),
  },
  {
    kind: 'none-pass',
    pattern: whole(
      `why (?:does|do|did|can|will|would) (?:nothing|none(?: of (?:them|these|the walls))?|no walls?|not (?:any|one)(?: wall)?) ${PASSES}`,
      `why (?:is|are) there (?:nothing|no walls?)(?: (?:that|which) ${PASSES})?`,
      `why (?:(?:nothing|none|no walls?) ${PASSES}|(?:doesn'?t|don'?t|won'?t|can'?t) (?:anything|any(?: walls?)?) ${PASSES})`,
      "what(?:(?:'?s| is) (?:wrong|the problem)| stands in the way)",
    ),
  },
  {
    kind: 'meaning',
    pattern: whole(
      'what (?:does|do|did) (?:that|this|it|all (?:of )?(?:that|this)|those words?) (?:mean|all mean)',
      "(?:i )?(?:do not|don'?t) (?:understand|get (?:that|this|it))(?: (?:that|this|it|the question|a word(?: of it)?|any of (?:that|this)))?",
      "what(?:'?s| is| are) (?:that|this|those|you asking)",
      '(?:huh|come again|pardon|say that again|in english(?: please)?)',
    ),
  },
];
