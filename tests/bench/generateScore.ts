/**
 * Scores of any size for measuring: dense, invented, and sound to the last sign.
 *
 * An event in about seven characters, one note in three with a sign, options and a span in every bar; that is thicker than
 * any source, so what is measured here is the hard case. The same seed gives the same score.
 */
import { Chance, numbersOf } from '../helpers/chance';

const HEAD = `bentside 1

title     "Pieces for measuring"
source K  "Thornmere Keyboard Book, the main text"
source L  "A loose copy in another hand"
signs     anglebert-1689

stave upper  lines 5
stave lower  lines 5
voice dessus upper
voice basse  lower
`;

const BARS_IN_SYSTEM = 4;
const BEATS_IN_BAR = 4;
/** A page of the source holds so many systems. */
const SYSTEMS_ON_PAGE = 6;

const letters = ['c', 'd', 'e', 'f', 'g', 'a', 'b'] as const;
const signs = ["'zz", "'pince", "'cb", "'turn", "'s", "'zs", "'ca"] as const;
/** Each f and b is drawn with one, so that no note stands against another form of itself. */
const accidentals: Readonly<Record<string, string>> = { f: '#', b: 'b' };

interface VoiceRange {
  readonly name: string;
  readonly low: number;
  readonly high: number;
}

const voices: readonly VoiceRange[] = [
  { name: 'dessus', low: 28, high: 40 },
  { name: 'basse', low: 14, high: 26 },
];

/** What fills one beat: the values of its events in their order. */
const beats: readonly [readonly string[], ...(readonly string[])[]] = [
  ['8', '8'],
  ['8.', '16'],
  ['16', '16', '8'],
  ['8', '16', '16'],
  ['16', '16', '16', '16'],
  ['4'],
  ['4'],
  ['8', '8'],
];

/** Writes one voice; value and octave stick as they do for a reader. */
class VoiceWriter {
  private step: number;
  private value = '';
  private octave = -1;
  private written = -1;

  constructor(
    private readonly chance: Chance,
    private readonly range: VoiceRange,
  ) {
    this.step = (range.low + range.high) >> 1;
  }

  beginSystem(): void {
    this.value = '';
    this.octave = -1;
  }

  bar(): string {
    const option = this.chance.below(BEATS_IN_BAR);
    const span = (option + 1 + this.chance.below(BEATS_IN_BAR - 1)) % BEATS_IN_BAR;
    return Array.from({ length: BEATS_IN_BAR }, (_, beat) => {
      if (beat === option) return this.options();
      return beat === span ? this.span() : this.beat();
    }).join(' ');
  }

  private beat(): string {
    return this.chance
      .pick(beats)
      .map((value) => this.event(value))
      .join(' ');
  }

  private span(): string {
    if (this.chance.happens(70)) {
      // The first value of a tuplet is typed, whatever is in force.
      this.value = '';
      return `{3in2 ${this.event('8')} ${this.event('8')} ${this.event('8')}}`;
    }
    // The value is typed inside; afterwards value and octave are as before.
    const { value, octave } = this;
    this.value = '';
    const small = `{small ${this.event('16')} ${this.event('16')}}`;
    this.value = value;
    this.octave = octave;
    return `${small} ${this.beat()}`;
  }

  private options(): string {
    const [value, octave, step] = [this.value, this.octave, this.step];
    const first = this.beat();
    const after = this.step;
    [this.value, this.octave, this.step] = [value, octave, step];
    const other = this.beat();
    this.step = after;
    this.value = '';
    this.octave = -1;
    return `<K: ${first} ; L: ${other}>`;
  }

  private event(value: string): string {
    const typed = value === this.value ? '' : `${value} `;
    this.value = value;
    return `${typed}${this.chance.happens(6) ? 'r' : this.chord()}`;
  }

  private chord(): string {
    const { low, high } = this.range;
    const moved = this.step + this.chance.pick([1, -1, 2, -2, 3, -3, 0] as const);
    this.step = Math.max(low, Math.min(high, moved));
    const sign = this.chance.below(3) === 0 ? this.chance.pick(signs) : '';
    const quick = this.chance.happens(2) ? '*"paler ink"' : '';
    const first = `${this.note(this.step)}${sign}${quick}`;
    return this.chance.happens(5) ? `${first}-${this.note(this.step + 2)}` : first;
  }

  private note(step: number): string {
    const octave = Math.floor(step / letters.length);
    const isTyped = octave !== this.octave || Math.abs(step - this.written) > 5;
    this.octave = octave;
    this.written = step;
    const letter = letters[step % letters.length] ?? 'c';
    return `${letter}${accidentals[letter] ?? ''}${isTyped ? octave : ''}`;
  }
}

/** A score of at least so many characters. */
export function generateScore(characters: number, seed = 1): string {
  const systems: string[] = [HEAD];
  let length = HEAD.length;
  const chance = new Chance(numbersOf(seed, characters * 2));
  const writers = voices.map((range) => new VoiceWriter(chance, range));
  for (let count = 0; length < characters; count++) {
    const page = count % SYSTEMS_ON_PAGE === 0 ? `\npage "${count / SYSTEMS_ON_PAGE + 1}r"` : '';
    const head = count === 0 ? 'system  upper G2  lower F4  meter C = 4/4' : 'system';
    const lanes = writers.map((writer, index) => {
      writer.beginSystem();
      const bars = Array.from({ length: BARS_IN_SYSTEM }, () => writer.bar());
      return `  ${voices[index]?.name ?? ''} | ${bars.join(' | ')} |`;
    });
    const system = `${page}\n${head}\n${lanes.join('\n')}\n`;
    systems.push(system);
    length += system.length;
  }
  return systems.join('');
}
