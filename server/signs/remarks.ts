/** What realising has to say: once for each place, with its place in the text. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Fix, Problem, Slots } from '../../grammar/findings/finding';
import type { Environment } from '../score/environment';
import type { PerformedEvent } from '../score/performance';
import type { PlacedProblem, ScoreSystem, Source } from '../score/score';
import type { BorneSign } from './bearing';
import { saysHow } from './said';
import { isAccepted } from './settled';

export class Remarks {
  readonly problems: PlacedProblem[] = [];
  private readonly said = new Set<string>();

  constructor(private readonly environment: Environment) {}

  /** Of a sign, at its mark; nothing of one of which somebody has accepted what is made of it. */
  ofSign(sign: BorneSign, code: FindingCode, slots: Slots, fixes: readonly Fix[] = []): void {
    if (isAccepted(sign, this.environment) && !saysHow(sign)) return;
    this.at(sign.written.placed.system, sign.mark.source, {
      code,
      slots: { sign: sign.mark.form.text, ...slots },
      fixes,
    });
  }

  /** Of a small note, where it stands. */
  ofSmall({ from: [{ placed }] }: PerformedEvent, code: FindingCode, slots: Slots): void {
    this.at(placed.system, placed.event.source, { code, slots: { sign: '{small …}', ...slots }, fixes: [] });
  }

  /** Of the whole performance, at the first place that it concerns. */
  once(sign: BorneSign, code: FindingCode): void {
    if (this.said.has(code)) return;
    this.said.add(code);
    this.at(sign.written.placed.system, sign.mark.source, { code, slots: {}, fixes: [] });
  }

  private at({ block }: ScoreSystem, { lane, pos, len, statement }: Source, told: Omit<Problem, 'pos' | 'len'>): void {
    const key = `${told.code} ${block} ${lane} ${pos}`;
    if (this.said.has(key)) return;
    this.said.add(key);
    const problem = { ...told, pos, len };
    this.problems.push({ problem, block, lane, ...(statement === undefined ? {} : { statement }) });
  }
}
