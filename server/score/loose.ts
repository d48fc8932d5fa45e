/** Bars of a loose system, whose lanes have bars of their own: a common bar ends where all have a barline. */
import {
  add,
  compare,
  earliest,
  equal,
  format,
  isNegative,
  latest,
  subtract,
  type Time,
  ZERO,
} from '../../grammar/time';
import {
  type BarStart,
  isThrough,
  type Laid,
  type LaidBar,
  none,
  type ReportIn,
  sourceOf,
  type VoiceBars,
} from './bars';
import { type DrawnBarline, isSpecial, type Meter } from './score';

/** Lays a loose system: every lane by its own sums. */
export function layLoose(
  voices: readonly VoiceBars[],
  elapsed: Time,
  meter: Meter | undefined,
  report: ReportIn,
): Laid {
  // Where all voices omit something, it takes no time; else it is empty time beside the others.
  const timed = !voices.every(omits);
  const perVoice = voices.map((voice) => layAlone(voice, meter, timed, report));
  const duration = perVoice.reduce((longest, { end }) => latest(longest, end), ZERO);
  perVoice.forEach(({ end }, v) => {
    const voice = voices[v];
    const last = voice?.bars.at(-1);
    if (voice === undefined || last === undefined || equal(end, duration) || last.bar.broken) return;
    if (omits(voice) || isSuspended(voice)) return;
    report(last.lane, 'loose-totals', sourceOf(last.lane, last.bar), {
      voice: voice.name,
      have: `${format(end)} ${end.n === 1 ? 'semibreve' : 'semibreves'}`,
      need: format(duration),
    });
  });
  const keyOf = (t: Time): string => `${t.n}/${t.d}`;
  const common = (perVoice[0]?.closings ?? []).filter(({ onset }) =>
    perVoice.every(({ closings }) => closings.some((one) => equal(one.onset, onset))),
  );
  const ends = common.map(({ onset }) => onset);
  if (ends.length === 0 || !equal(ends.at(-1) ?? ZERO, duration)) ends.push(duration);
  const endKeys = new Set(ends.map(keyOf));
  const barOf = (onset: Time): number => {
    const index = ends.findIndex((end) => compare(onset, end) < 0);
    return index < 0 ? ends.length - 1 : index;
  };
  const inner = perVoice.flatMap(({ closings }, v) =>
    closings.filter(({ onset }) => !endKeys.has(keyOf(onset))).map((one) => ({ voice: voices[v]?.voice ?? 0, ...one })),
  );
  const broken = voices.flatMap(({ bars }, v) =>
    bars.flatMap(({ bar }, b) =>
      bar.broken || bar.blank !== undefined ? [barOf(perVoice[v]?.starts[b]?.onset ?? ZERO)] : [],
    ),
  );
  const bars = ends.map((end, index): LaidBar => {
    const onset = index === 0 ? ZERO : (ends[index - 1] ?? ZERO);
    const closings = perVoice.flatMap((one) => one.closings.filter((closing) => equal(closing.onset, end)));
    const special = closings.find(({ closing }) => isSpecial(closing)) ?? closings[0];
    return {
      onset,
      duration: subtract(end, onset),
      elapsed: index === 0 ? elapsed : ZERO,
      meter,
      closing: closings.length === voices.length ? special?.closing : undefined,
      broken: broken.includes(index),
      sums: none,
      inner: inner
        .filter((one) => barOf(one.onset) === index)
        .map(({ voice, onset: at, closing }) => ({ ...closing, voice, onset: at })),
    };
  });
  return {
    bars,
    duration,
    voices: voices.map(({ voice }, v) => ({ voice, starts: perVoice[v]?.starts ?? [], runningOn: ZERO })),
    barOf,
  };
}

const omits = ({ bars }: VoiceBars): boolean => bars.some(({ bar }) => bar.omissions.length > 0);

/** `lost ?` takes whatever time there is. */
const isSuspended = ({ bars }: VoiceBars): boolean =>
  bars.some(({ bar }) => bar.events.some(({ kind, fills }) => kind === 'lost' && fills));

function layAlone(
  voice: VoiceBars,
  meter: Meter | undefined,
  timed: boolean,
  report: ReportIn,
): {
  starts: BarStart[];
  closings: { onset: Time; closing: DrawnBarline }[];
  end: Time;
} {
  const starts: BarStart[] = [];
  const closings: { onset: Time; closing: DrawnBarline }[] = [];
  let onset = voice.runningOn;
  /** Where the last barline stands: a note may run through it. */
  let barline = ZERO;
  for (const [index, { lane, bar }] of voice.bars.entries()) {
    if (bar.blank !== undefined) {
      report(lane, 'empty-bar', bar.blank.at, { voice: voice.name }, { bar: index, fixes: bar.blank.fixes });
    }
    const gaps = timed ? bar.omissions.map(({ time: omitted }) => omitted ?? ZERO) : [];
    // Where all omit the bar, nothing is left of it, not even its barline.
    const isGone = !timed && bar.events.length === 0 && bar.omissions.length > 0;
    const rest = bar.fills && meter !== undefined ? subtract(meter.length, bar.time) : ZERO;
    const filler = isNegative(rest) ? ZERO : rest;
    starts.push({ onset, filler, gaps });
    onset = add(onset, add(gaps.reduce(add, bar.time), filler));
    const full = meter === undefined ? onset : add(barline, meter.length);
    barline = isThrough(bar) ? earliest(full, onset) : onset;
    if (bar.closing !== undefined && !isGone) closings.push({ onset: barline, closing: bar.closing });
  }
  return { starts, closings, end: onset };
}
