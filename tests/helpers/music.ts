/** Short ways to say a passage in a test and to read what became of it. */
import type { Finding } from '../../grammar/findings/finding';
import { parseFile } from '../../grammar/parse';
import { format } from '../../grammar/time';
import type { Spelling } from '../../grammar/tree';
import { type Analysis, analyse } from '../../server/document/analysis';
import type { Score } from '../../server/score/score';
import { eventsOf, type PlacedEvent } from '../../server/score/walk';

/** Two staves with three voices; the passage follows. */
export const HEAD = `bentside 1
source K "the Thornmere Keyboard Book"
source L "a loose leaf"
stave upper
stave lower
voice dessus upper stems up
voice taille upper stems down
voice basse lower
`;

export const analysed = (text: string): Analysis => analyse('passage.bent', parseFile(text));

/** A passage under the usual head; statements such as `accidentals bar` go before it. */
export const passage = (music: string, before = ''): Analysis => analysed(`${HEAD}${before}\n${music}`);

/** One lane of dessus under C with a final barline, clefs stated. */
export const lane = (music: string, meter = 'C', before = ''): Analysis =>
  passage(`system upper C1 lower F4 meter ${meter}\n  dessus | ${music} |||\n`, before);

export function scoreOf(analysis: Analysis, choice = 'written'): Score {
  const score = analysis.score(choice);
  if (score === undefined) throw new Error(`no choice ${choice}`);
  return score;
}

export const eventsIn = (analysis: Analysis, voice = 'dessus', choice = 'written'): PlacedEvent[] => {
  const score = scoreOf(analysis, choice);
  const index = score.environment.voices.findIndex((one) => one.name === voice);
  return score.pieces.flatMap((piece) => [...eventsOf(piece)].filter(({ event }) => event.voice === index));
};

const signs = ['bb', 'b', '', '#', '##'];
/** The sounding note: `bb4` for b flat, chords joined by hyphens. */
export const sounding = (member: { spelling: Spelling; octave: number; alteration: number }): string =>
  `${member.spelling.letter}${signs[member.alteration + 2] ?? '?'}${member.octave}`;

/** Sounding notes of a voice in order, rests as `r`, gaps as `_`. */
export const sound = (analysis: Analysis, voice = 'dessus', choice = 'written'): string =>
  eventsIn(analysis, voice, choice)
    .map(({ event }) =>
      event.kind === 'note' ? event.members.map(sounding).join('-') : event.kind === 'rest' ? 'r' : '_',
    )
    .join(' ');

/** Durations of a voice in semibreves. */
export const durations = (analysis: Analysis, voice = 'dessus', choice = 'written'): string =>
  eventsIn(analysis, voice, choice)
    .map(({ event }) => format(event.duration))
    .join(' ');

export const codes = (analysis: Analysis): string[] => analysis.findings().map((finding) => finding.code);

/** Findings that an editor has to mend. */
export const errors = (analysis: Analysis): string[] =>
  analysis
    .findings()
    .filter((finding) => finding.level === 'error')
    .map((finding) => finding.code);

export function findingOf(analysis: Analysis, code: string): Finding {
  const found = analysis.findings().find((finding) => finding.code === code);
  if (found === undefined) throw new Error(`no finding ${code} among ${codes(analysis).join(', ')}`);
  return found;
}

/** The text after a finding's first fix, or the one of this title. */
export function mended(analysis: Analysis, code: string, title?: string): string {
  const finding = findingOf(analysis, code);
  const fix = finding.fixes.find((one) => title === undefined || one.title.includes(title));
  if (fix === undefined) throw new Error(`${code} has no such fix`);
  return [...fix.edits]
    .sort((a, b) => b.offset - a.offset)
    .reduce(
      (text, edit) => text.slice(0, edit.offset) + edit.text + text.slice(edit.offset + edit.length),
      analysis.tree.text,
    );
}

/** The sentences of all findings of a code, in the order of the text. */
export const messages = (analysis: Analysis, code: string): string[] =>
  analysis
    .findings()
    .filter((finding) => finding.code === code)
    .map((finding) => finding.message);

/** Dessus over basse in one system with clefs and a final barline. */
export const duet = (dessus: string, basse: string, meter = 'C', before = ''): Analysis =>
  passage(`system upper C1 lower F4 meter ${meter}\n  dessus | ${dessus} |||\n  basse | ${basse} |||\n`, before);
