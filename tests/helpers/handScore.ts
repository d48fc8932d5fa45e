/** Scores made by hand from lanes of plain notes, for tests of what reads a score. */

import { markOf, spanHeadOf, spellingOf, tieOf, valueFormOf } from '../../grammar/lanes/forms';
import { add, multiply, subtract, type Time, time, ZERO } from '../../grammar/time';
import type { BarlineShape, Clef, SpanHead } from '../../grammar/tree';
import { written } from '../../server/score/choice';
import type { Environment } from '../../server/score/environment';
import type {
  AppliedMark,
  Bar,
  Curve,
  CurveEnd,
  KeySign,
  Meter,
  NoteMember,
  Score,
  Source,
  StateChange,
  SystemBar,
  SystemVoice,
  Tuplet,
  VoiceEvent,
} from '../../server/score/score';

export interface HandMade {
  readonly title?: string;
  readonly staves: readonly { readonly name: string; readonly lines?: number; readonly clef: Clef }[];
  readonly voices: readonly { readonly name: string; readonly stave: number; readonly stems?: 'up' | 'down' }[];
  readonly key?: readonly KeySign[];
  readonly meter?: Meter;
  readonly lanes: readonly string[];
  readonly tweak?: (bars: Bar[]) => void;
}

const SHAPES = ['|', '||', '|||', ':||', '||:', ':||:'];
const SEMITONES: Record<string, number> = { c: 0, d: 2, e: 4, f: 5, g: 7, a: 9, b: 11 };
const ALTER: Record<string, number> = { '#': 1, '##': 2, b: -1, bb: -2, n: 0 };

const sourceAt = (lane: number, pos: number, len: number): Source => ({ block: 0, lane, pos, len });

export function handScore(made: HandMade): Score {
  const voices: SystemVoice[] = [];
  let barData: { onset: Time; duration: Time; closing: BarlineShape }[] = [];
  for (const [v, lane] of made.lanes.entries()) {
    const read = readLane(lane, v, made);
    voices.push({ voice: v, lane: v, events: read.events, curves: read.curves });
    if (barData.length === 0) barData = read.bars;
  }
  const changes: StateChange[] = [
    ...made.staves.map(
      ({ clef }, stave): StateChange => ({
        onset: ZERO,
        bar: 0,
        stave,
        clefs: [clef],
        restated: false,
        source: undefined,
      }),
    ),
    {
      onset: ZERO,
      bar: 0,
      stave: undefined,
      restated: false,
      source: undefined,
      ...(made.key && { key: made.key }),
      ...(made.meter && { meter: made.meter }),
    },
  ];
  const systemBars: SystemBar[] = barData.map(({ onset, duration, closing }) => ({
    onset,
    duration,
    continues: false,
    closing: { shape: closing, editors: false },
    opening: undefined,
    meter: made.meter,
    ending: undefined,
    irregular: false,
    inner: [],
    broken: false,
  }));
  const bars: Bar[] = systemBars.map((bar, index) => ({
    index,
    number: `${index + 1}`,
    system: 0,
    onset: bar.onset,
    duration: bar.duration,
    expected: made.meter?.length,
    meter: made.meter,
    opening: undefined,
    closing: bar.closing,
    ending: undefined,
    irregular: false,
    inner: [],
  }));
  made.tweak?.(bars);
  const last = barData.at(-1);
  const duration = last === undefined ? ZERO : add(last.onset, last.duration);
  const environment = {
    title: made.title,
    staves: made.staves.map(({ name, lines }) => ({ name, lines: lines ?? 5 })),
    voices: made.voices.map((voice) => ({ stems: undefined, ...voice })),
    sources: [],
    readings: [],
    accidentals: 'note',
    beaming: [],
    tempo: undefined,
    pitch: undefined,
    compass: undefined,
    signs: undefined,
    tables: [],
    notes: new Map(),
    editors: new Map(),
    stated: new Set(),
    statements: [],
    problems: [],
  } as unknown as Environment;
  return {
    file: 'hand.bent',
    tree: { text: '', blocks: [], lineStarts: [0] },
    environment,
    choice: written('note'),
    problems: [],
    pieces: [
      {
        name: '',
        bars,
        sections: [],
        order: undefined,
        duration,
        systems: [
          {
            block: 0,
            page: '1',
            ordinal: 1,
            firstBar: 0,
            onset: ZERO,
            score: {
              kind: 'measured',
              bars: systemBars,
              duration,
              voices,
              changes,
              sections: [],
              carryOut: {
                clefs: [],
                keys: [],
                meter: undefined,
                tempo: undefined,
                open: undefined,
                voices: [],
                begun: true,
                lastBar: undefined,
              },
              problems: [],
            },
          },
        ],
      },
    ],
  };
}

interface ReadLane {
  events: VoiceEvent[];
  curves: Curve[];
  bars: { onset: Time; duration: Time; closing: BarlineShape }[];
}

function readLane(lane: string, voice: number, made: HandMade): ReadLane {
  const events: VoiceEvent[] = [];
  const curves: Curve[] = [];
  const bars: ReadLane['bars'] = [];
  const stave = made.voices[voice]?.stave ?? 0;
  let octave = 4;
  let value = valueFormOf('4');
  let now = ZERO;
  let barStart = ZERO;
  let tuplet: Tuplet | undefined;
  let small = false;
  let group = 0;
  const spans: SpanHead[] = [];
  const open: { start: CurveEnd; form: AppliedMark['form'] }[] = [];
  let tied: NoteMember[] = [];
  let pos = 0;
  const fill = (what: VoiceEvent['kind'], text: string): void => {
    const duration = small
      ? ZERO
      : what === 'note' || !/bar|__/.test(text)
        ? multiply(value?.duration ?? ZERO, tuplet ? time(tuplet.m, tuplet.n) : time(1))
        : (made.meter?.length ?? ZERO);
    const source = sourceAt(voice, pos, text.length);
    const members: NoteMember[] = [];
    const index = events.length;
    if (what === 'note') {
      for (const [m, one] of text.split(/-(?=[a-g])/).entries()) {
        const match = /^([a-g][#bn]*(?:\[[#bn]+\]|\([#bn]+\))?\d?\??)(\[?=\]?\??)?(.*)$/.exec(one);
        const spelling = spellingOf(match?.[1] ?? '');
        if (spelling === undefined) throw new Error(`hand score: ${one}`);
        octave = spelling.octave ?? octave;
        const sign = spelling.accidental ?? spelling.editors ?? spelling.cautionary;
        const key = made.key?.find(({ letter }) => letter === spelling.letter);
        const alteration = ALTER[sign ?? key?.accidental ?? 'n'] ?? 0;
        const marks: AppliedMark[] = [];
        for (const text of (match?.[3] ?? '').split(/(?=')/).filter((t) => t !== '')) {
          const form = markOf(text);
          if (form === undefined) continue;
          const end: CurveEnd = {
            event: index,
            member: text.split(/-(?=[a-g])/).length > 1 ? m : undefined,
            onBarline: false,
            form,
            source,
          };
          if (form.type === 'curveStart') open.push({ start: end, form });
          else if (form.type === 'curveEnd') {
            const begun = open.pop();
            curves.push({
              kind: 'u',
              form: begun?.form ?? form,
              start: begun?.start,
              end,
              incoming: undefined,
              outgoing: undefined,
            });
          } else
            marks.push({
              form,
              shapes: form.type === 'sign' ? [form.name] : [],
              accidentals: [],
              annotations: [],
              source,
            });
        }
        members.push({
          spelling,
          octave,
          alteration,
          midi: 12 * (octave + 1) + (SEMITONES[spelling.letter] ?? 0) + alteration,
          stave,
          tiedFrom: tied.some((t) => t.spelling.letter === spelling.letter && t.octave === octave),
          tie: match?.[2] === undefined ? undefined : tieOf(match[2]),
          marks,
          annotations: [],
          source,
        });
      }
      tied = members.filter((member) => member.tie !== undefined);
    }
    events.push({
      kind: what,
      voice,
      stave,
      bar: bars.length,
      onset: now,
      duration,
      value: /bar|__/.test(text) && what !== 'note' ? undefined : value,
      wholeBar: what !== 'note' && /bar|__/.test(text),
      small: small ? { to: 'next', group } : undefined,
      members,
      marks: [],
      annotations: [],
      words: [],
      tuplets: tuplet ? [tuplet] : [],
      beam: undefined,
      stems: made.voices[voice]?.stems,
      spans: [...spans],
      chosen: [],
      custos: undefined,
      figures: undefined,
      syllable: undefined,
      address: `${bars.length + 1}.${index + 1}`,
      laneName: made.voices[voice]?.name ?? '',
      source,
    });
    now = add(now, duration);
  };
  for (const token of lane.split(/\s+/)) {
    pos = lane.indexOf(token, pos);
    if (token === '') continue;
    if (SHAPES.includes(token)) {
      const duration = made.meter?.length ?? subtract(now, barStart);
      bars.push({ onset: barStart, duration, closing: token as BarlineShape });
      barStart = add(barStart, duration);
      if (bars.length === 0) now = barStart;
      continue;
    }
    const head = spanHeadOf(token);
    if (token.startsWith('{') && head !== undefined) {
      if (head.word === 'small') {
        small = true;
        group += 1;
      } else if (head.word === undefined && head.proportion)
        tuplet = { ...head.proportion, drawn: true, unit: time(1, 8), complete: true };
      else spans.push(head);
      continue;
    }
    if (token === '}') {
      if (small) small = false;
      else if (tuplet) tuplet = undefined;
      else spans.pop();
      continue;
    }
    const asValue = valueFormOf(token);
    if (asValue !== undefined) value = asValue;
    else fill(token === 'r' || token === 'rbar' ? 'rest' : token === '_' || token === '__' ? 'gap' : 'note', token);
  }
  return { events, curves, bars };
}
