/** The beginning of a file: a source, its staves and voices, and a first system to be typed in. */
import { quoted } from '../grammar/quoted';

export interface StaveWish {
  readonly name: string;
  readonly lines: number;
  readonly clef: string;
  readonly voices: readonly string[];
}

export interface Beginning {
  /** The letter of the source. */
  readonly siglum: string;
  readonly description: string;
  readonly leaf: string;
  readonly staves: readonly StaveWish[];
  readonly meter: string;
}

/** The text, as a snippet: the title first, then each lane is a place to type in. */
export function beginningText({ siglum, description, leaf, staves, meter }: Beginning): string {
  const voices = staves.flatMap((stave) => stave.voices);
  const width = Math.max(...voices.map((voice) => voice.length));
  const clefs = staves.map(({ name, clef }) => `${name} ${clef}`).join(' ');
  return [
    'bentside 1',
    '',
    'title "$1"',
    `source ${siglum} ${literal(quoted(description))}`,
    '',
    ...staves.map(({ name, lines }) => `stave ${name} lines ${lines}`),
    ...staves.flatMap(({ name, voices: on }) =>
      on.map((voice, index) => voiceText(voice, name, stems(index, on.length))),
    ),
    '',
    `page ${literal(quoted(leaf))}`,
    `system ${clefs} meter ${meter}`,
    ...voices.map((voice, index) => `  ${voice.padEnd(width)} | \${${index + 2}}`),
    '',
  ].join('\n');
}

const voiceText = (voice: string, stave: string, points: string | undefined): string =>
  `voice ${voice} ${stave}${points === undefined ? '' : ` stems ${points}`}`;

/** Of voices that share a stave the upper ones point up. */
const stems = (index: number, count: number): 'up' | 'down' | undefined =>
  count < 2 ? undefined : index < count / 2 ? 'up' : 'down';

/** Text in which the signs of a snippet mean themselves. */
const literal = (text: string): string => text.replace(/[\\$}]/g, '\\$&');
