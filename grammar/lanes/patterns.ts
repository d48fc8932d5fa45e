/**
 * The spelling of the small signs of a lane, as regular expression sources.
 *
 * They feed the lexer and the readers of single signs. None nests one repetition in another over the same characters,
 * so that no text, however hostile, makes one of them slow; what repeats more than a sign does so a bounded number of times, for
 * an endless repetition fills the memory of the matcher.
 */
const accidental = '(?:##|#|bb|b|n)';
const name = '[A-Za-z]\\w*';
const layered = `${name}(?:\\.\\d+)?`;
const names = `${layered}(?:,${layered}){0,99}`;
const readings = `:!?${names}`;
const tie = `(?:\\[=\\]|=)\\??(?:${readings})?`;
const value = '(?:Mx|L|B|\\d+)\\.*(?:x(?:\\d+in\\d+)?)?\\??';
const drawn = `(?:\\[${accidental}\\]|\\(${accidental}\\))`;
const spelling = `[a-g]${accidental}?${drawn}?\\d?\\??`;
const mark = ['[1-5](?:-[1-5])*', '##|#|bb|b|n', `\\.(?:[a-g]${accidental}?\\d|~)?`, `${name}~?`].join('|');
/** With its square brackets, if it has any; of the forms after it each stands once, in this order. */
const markHead = `'(?:\\[(?:${mark})\\]|(?:${mark}))`;
const label = `${layered}\\??`;
const labels = `${label}(?:,${label}){0,99}:`;
/** What may stand between round brackets; a comment begins even there. */
const inRound = '[^()"\\n/]*(?:/(?!/)[^()"\\n/]*){0,99}';
/** Two quotes in a string stand for one, so a string is a run of quoted pieces. */
const string = '(?:"[^"\\n]*"){1,1000}';
const annotation = `\\*(?:${string}|${name})`;

export const source = {
  accidental,
  drawn,
  name,
  names,
  readings,
  tie,
  value,
  spelling,
  string,
  labels,
  /** What may stand after a note, rest, gap or mark. */
  afterEvent: "(?!(?!//|:\\|)[^'*\\s|{}<>;,&-])",
  /** What may stand after a value or a word of its own. */
  afterWord: '(?!(?!//|:\\|)[^\\s|{}<>;(",&])',
  mark: `${markHead}\\??\\+?(?:\\(${inRound}\\))?(?:${readings})?`,
  markHead,
  /** A mark whose forms stand in any order, or more than once. */
  markUnordered: `${markHead}(?:\\?|\\+|\\(${inRound}\\)|${readings}){2,8}`,
  annotation,
  inRound,
  spanHead: `\\{(?:\\d+in\\d+|[A-Za-z]+(?:[ \\t]+(?:\\d+:\\d+|\\d+in\\d+))?)(?:${readings})?(?!(?!//)[^\\s}])`,
  optionHead: `<(?:${name}(?:${annotation}){0,99}[ \\t]+)?${labels}`,
  optionNext: `;[ \\t]*${labels}`,
  barline: '(?::\\|\\|:|:\\|\\||\\|\\|:|\\|\\|\\||\\|\\||\\|)(?![|:])(?:\\[\\])?',
} as const;

/** The whole text and nothing else. */
export const whole = (pattern: string): RegExp => new RegExp(`^(?:${pattern})$`);
