/** Curves and lines of a system: beginnings and ends matched, over system ends by the carry. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { MarkForm } from '../../grammar/tree';
import type { OpenCurve, PitchState } from './carry';
import type { Curve, CurveEnd, Source } from './score';

/** A mark that begins or ends a curve, in the order of its voice. */
export interface CurveMark {
  readonly form: MarkForm;
  readonly end: CurveEnd;
  /** What sounds where it stands. */
  readonly pitches: readonly PitchState[];
}

/** An ending begins here, in all voices. */
export interface EndingMark {
  readonly ending: number;
}

interface Open {
  readonly voice: number;
  readonly curve: OpenCurve;
  readonly start: CurveEnd | undefined;
  readonly form: MarkForm;
  readonly incoming: number | undefined;
}

export interface MatchedCurves {
  readonly curves: readonly Curve[];
  /** By voice: what goes on in the next system. */
  readonly open: ReadonlyMap<number, readonly OpenCurve[]>;
}

/** Of the curves open in a voice at the end of a system so many, the latest, go on; the others never end. */
const MOST_OPEN = 100;

/** Stands in for the form of a curve that began in an earlier system. */
const EARLIER: MarkForm = {
  text: "'u",
  type: 'curveStart',
  name: 'u',
  openEnded: false,
  editors: false,
  doubtful: false,
  linked: false,
  parameters: [],
};

const kindOf = (form: MarkForm): Curve['kind'] => (form.name === 'line' ? 'line' : 'u');

/** The name by which both ends of a curve know each other: `'u(q1)` … `'.(q1)`. */
const nameOf = (form: MarkForm): string | undefined => form.parameters.find((word) => !places.has(word));
const places = new Set(['above', 'below', 'after', 'before']);

const begunOn = (open: Open, form: MarkForm): boolean => {
  const wanted = form.begunOn;
  if (wanted === undefined) return true;
  return open.curve.pitches.some((pitch) => pitch.letter === wanted.letter && pitch.octave === wanted.octave);
};

/** Walks the marks of all voices of a system in their order. */
class Matcher {
  private readonly curves: Curve[] = [];
  private open: Open[] = [];

  constructor(
    incoming: ReadonlyMap<number, readonly OpenCurve[]>,
    private readonly report: (code: FindingCode, at: Source, slots: Record<string, string>) => void,
  ) {
    for (const [voice, list] of incoming) {
      list.forEach((curve, index) => {
        this.open.push({ voice, curve, start: undefined, form: EARLIER, incoming: index });
      });
    }
  }

  take(mark: CurveMark | EndingMark): void {
    if ('ending' in mark) this.enter(mark);
    else if (mark.form.type === 'curveStart') this.begin(mark);
    else this.finish(mark);
  }

  result(): MatchedCurves {
    const left = new Map<number, number>();
    for (const { voice } of this.open) left.set(voice, (left.get(voice) ?? 0) + 1);
    const still = new Map<number, OpenCurve[]>();
    for (const one of this.open) {
      const more = left.get(one.voice) ?? 0;
      left.set(one.voice, more - 1);
      if (more > MOST_OPEN) {
        this.keep(one, undefined);
        continue;
      }
      const list = still.get(one.voice) ?? [];
      this.keep(one, undefined, list.length);
      list.push(one.curve);
      still.set(one.voice, list);
    }
    return { curves: this.curves, open: still };
  }

  private keep({ voice, curve, start, form, incoming }: Open, end: CurveEnd | undefined, outgoing?: number): void {
    this.curves.push({ voice, kind: curve.kind, form, start, end, incoming, outgoing, waits: curve.waits });
  }

  private begin({ form, end, pitches }: CurveMark): void {
    const curve: OpenCurve = { kind: kindOf(form), name: nameOf(form), pitches, waits: false };
    const open: Open = { voice: end.voice, curve, start: end, form, incoming: undefined };
    if (form.openEnded) this.keep(open, undefined);
    else this.open.push(open);
  }

  private finish({ form, end }: CurveMark): void {
    const name = nameOf(form);
    if (form.openEnded) {
      const curve: OpenCurve = { kind: 'u', name, pitches: [], waits: false };
      this.keep({ voice: end.voice, curve, start: undefined, form, incoming: undefined }, end);
      return;
    }
    const index = this.open.findLastIndex(
      (one) =>
        !one.curve.waits &&
        (name === undefined ? one.voice === end.voice : one.curve.name === name) &&
        begunOn(one, form),
    );
    const [found] = index < 0 ? [] : this.open.splice(index, 1);
    if (found === undefined) {
      const code = form.begunOn === undefined && name === undefined ? 'curve-end-alone' : 'curve-end-unmatched';
      this.report(code, end.source, { text: form.text });
      return;
    }
    this.keep(found.incoming === undefined ? found : { ...found, form }, end);
  }

  /** What is open at the first ending enters every ending alike; what an ending leaves open never ends. */
  private enter({ ending }: EndingMark): void {
    const enters: Open[] = [];
    for (const one of this.open) {
      if (one.curve.waits === ending > 1) enters.push(one);
      else this.keep(one, undefined);
    }
    this.open = [true, false].flatMap((waits) => enters.map((one) => ({ ...one, curve: { ...one.curve, waits } })));
  }
}

/**
 * Matches the ends of all voices of a system.
 * @param marks in their order
 * @param incoming open curves of each voice from the system before
 */
export function matchCurves(
  marks: readonly (CurveMark | EndingMark)[],
  incoming: ReadonlyMap<number, readonly OpenCurve[]>,
  report: (code: FindingCode, at: Source, slots: Record<string, string>) => void,
): MatchedCurves {
  const matcher = new Matcher(incoming, report);
  for (const mark of marks) matcher.take(mark);
  return matcher.result();
}
