/** Curves and lines of a system: beginnings and ends matched, over system ends by the carry. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { MarkForm } from '../../grammar/tree';
import type { OpenCurve, PitchState } from './carry';
import type { Curve, CurveEnd, Source } from './score';

/** A mark that begins or ends a curve, in the order of its voice. */
export interface CurveMark {
  readonly voice: number;
  readonly form: MarkForm;
  readonly end: CurveEnd;
  /** What sounds where it stands. */
  readonly pitches: readonly PitchState[];
}

interface Open {
  readonly voice: number;
  readonly curve: OpenCurve;
  readonly start: CurveEnd | undefined;
  readonly form: MarkForm | undefined;
  readonly incoming: number | undefined;
}

export interface MatchedCurves {
  readonly curves: ReadonlyMap<number, readonly Curve[]>;
  /** By voice: what goes on in the next system. */
  readonly open: ReadonlyMap<number, readonly OpenCurve[]>;
}

const kindOf = (form: MarkForm): Curve['kind'] => (form.name === 'line' ? 'line' : 'u');

/** The name by which both ends of a curve know each other: `'u(q1)` … `'.(q1)`. */
const nameOf = (form: MarkForm): string | undefined => form.parameters.find((word) => !places.has(word));
const places = new Set(['above', 'below', 'after', 'before']);

const begunOn = (open: Open, form: MarkForm): boolean => {
  const wanted = form.begunOn;
  if (wanted === undefined) return true;
  return open.curve.pitches.some((pitch) => pitch.letter === wanted.letter && pitch.octave === wanted.octave);
};

/**
 * Matches the ends of all voices of a system.
 * @param marks by voice, each in its order
 * @param incoming open curves of each voice from the system before
 */
export function matchCurves(
  marks: readonly CurveMark[],
  incoming: ReadonlyMap<number, readonly OpenCurve[]>,
  placeholder: MarkForm,
  report: (code: FindingCode, at: Source, slots: Record<string, string>) => void,
): MatchedCurves {
  const curves = new Map<number, Curve[]>();
  const keep = (voice: number, curve: Curve): void => {
    const list = curves.get(voice);
    if (list === undefined) curves.set(voice, [curve]);
    else list.push(curve);
  };
  let open: Open[] = [];
  for (const [voice, list] of incoming) {
    list.forEach((curve, index) => {
      open.push({ voice, curve, start: undefined, form: undefined, incoming: index });
    });
  }
  const begin = (mark: CurveMark): void => {
    const { form, voice, end } = mark;
    if (form.openEnded) {
      keep(voice, { kind: kindOf(form), form, start: end, end: undefined, incoming: undefined, outgoing: undefined });
      return;
    }
    const curve: OpenCurve = { kind: kindOf(form), name: nameOf(form), pitches: mark.pitches };
    open.push({ voice, curve, start: end, form, incoming: undefined });
  };
  const finish = (mark: CurveMark): void => {
    const { form, voice, end } = mark;
    if (form.openEnded) {
      keep(voice, { kind: 'u', form, start: undefined, end, incoming: undefined, outgoing: undefined });
      return;
    }
    const name = nameOf(form);
    const found = open.findLast((one) =>
      name === undefined ? one.voice === voice && begunOn(one, form) : one.curve.name === name && begunOn(one, form),
    );
    if (found === undefined) {
      report(form.begunOn === undefined && name === undefined ? 'curve-end-alone' : 'curve-end-unmatched', end.source, {
        text: form.text,
      });
      return;
    }
    open = open.filter((one) => one !== found);
    keep(found.voice, {
      kind: found.curve.kind,
      form: found.form ?? form,
      start: found.start,
      end,
      incoming: found.incoming,
      outgoing: undefined,
    });
  };
  for (const mark of marks) {
    if (mark.form.type === 'curveStart') begin(mark);
    else finish(mark);
  }
  const still = new Map<number, OpenCurve[]>();
  for (const one of open) {
    const list = still.get(one.voice) ?? [];
    keep(one.voice, {
      kind: one.curve.kind,
      form: one.form ?? placeholder,
      start: one.start,
      end: undefined,
      incoming: one.incoming,
      outgoing: list.length,
    });
    list.push(one.curve);
    still.set(one.voice, list);
  }
  return { curves, open: still };
}
