/** What practices have to say: each thing once at its place in the text. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Slots } from '../../grammar/findings/finding';
import type { FileSource, PlacedProblem } from '../score/score';
import type { Stroke } from './lines';
import type { Practice } from './practice';

export class Remarks {
  readonly problems: PlacedProblem[] = [];
  /** Practices that found something to act on, be it that it stands as written for the sake of another voice. */
  readonly met = new Set<Practice>();
  private readonly said = new Set<string>();

  constructor(readonly voiceName: (voice: number) => string) {}

  /** At a note. */
  atStroke({ placed: { system, event, bar } }: Stroke, code: FindingCode, slots: Slots, related?: Related): void {
    const { voice, source } = event;
    const at = { ...source, block: system.block };
    this.say(at, code, { bar: bar.number, voice: this.voiceName(voice), ...slots }, related);
  }

  /** At the statement of a practice. */
  atPractice({ source, text }: Practice, code: FindingCode, slots: Slots): void {
    this.say(source, code, { practice: text, ...slots });
  }

  private say(
    { block, lane, pos, len, statement }: FileSource,
    code: FindingCode,
    slots: Slots,
    related?: Related,
  ): void {
    const key = `${code} ${block} ${lane} ${statement} ${pos}`;
    if (this.said.has(key)) return;
    this.said.add(key);
    this.problems.push({
      problem: { code, slots, pos, len },
      block,
      lane: statement === undefined ? lane : undefined,
      ...(statement === undefined ? {} : { statement }),
      ...(related === undefined ? {} : { related }),
    });
  }
}

type Related = NonNullable<PlacedProblem['related']>;
