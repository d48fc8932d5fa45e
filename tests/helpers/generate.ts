/** Whole scores that never existed, valid to the last sign, for laws that must hold of every score. */
import fc from 'fast-check';
import { Chance, numbersOf } from './chance';
import { type BarTask, freshCarry, LaneWriter, SEMIBREVE, type VoiceCarry } from './generateLane';

/** What a score may hold besides measured systems with one state of the text. */
export interface Wanted {
  /** `system loose`. */
  readonly loose?: boolean;
  /** `system free`. */
  readonly free?: boolean;
  /** Options, witness lanes, places. */
  readonly options?: boolean;
  /** Sub-lanes with figures and words. */
  readonly subLanes?: boolean;
}

interface Voice {
  readonly name: string;
  readonly stave: string;
  readonly stems: 'up' | 'down' | undefined;
  readonly range: { readonly low: number; readonly high: number };
}

interface Frame {
  readonly staves: readonly string[];
  readonly voices: readonly Voice[];
}

const MIDDLE_C = 28;
const upperRange = { low: MIDDLE_C, high: MIDDLE_C + 12 };
const lowerRange = { low: MIDDLE_C - 12, high: MIDDLE_C + 1 };

const frames: readonly [Frame, ...Frame[]] = [
  {
    staves: ['upper', 'lower'],
    voices: [
      { name: 'dessus', stave: 'upper', stems: undefined, range: upperRange },
      { name: 'basse', stave: 'lower', stems: undefined, range: lowerRange },
    ],
  },
  {
    staves: ['upper', 'lower'],
    voices: [
      { name: 'dessus', stave: 'upper', stems: 'up', range: { low: MIDDLE_C + 4, high: MIDDLE_C + 13 } },
      { name: 'taille', stave: 'upper', stems: 'down', range: { low: MIDDLE_C - 2, high: MIDDLE_C + 5 } },
      { name: 'basse', stave: 'lower', stems: undefined, range: lowerRange },
    ],
  },
  { staves: ['upper'], voices: [{ name: 'dessus', stave: 'upper', stems: undefined, range: upperRange }] },
  {
    staves: ['upper', 'lower', 'pedal'],
    voices: [
      { name: 'dessus', stave: 'upper', stems: 'up', range: { low: MIDDLE_C + 5, high: MIDDLE_C + 13 } },
      { name: 'haute_contre', stave: 'upper', stems: 'down', range: { low: MIDDLE_C, high: MIDDLE_C + 6 } },
      { name: 'taille', stave: 'lower', stems: undefined, range: { low: MIDDLE_C - 6, high: MIDDLE_C + 2 } },
      { name: 'basse', stave: 'pedal', stems: undefined, range: { low: MIDDLE_C - 14, high: MIDDLE_C - 3 } },
    ],
  },
];

const meters: readonly [readonly [string, number], ...(readonly [string, number])[]] = [
  ['C', SEMIBREVE],
  ['cut-C = 2/2', SEMIBREVE],
  ['3/4', 96],
  ['3', 96],
  ['3/2', 192],
  ['6/8', 96],
  ['3/8', 48],
  ['2/4', 64],
];

const clefs: Readonly<Record<string, readonly [string, ...string[]]>> = {
  upper: ['G2', 'C1', 'G1'],
  lower: ['F4', 'F3', 'C3', 'C4'],
  pedal: ['F4'],
};
const keys = ['', 'key bb', 'key f# c#', 'key bb eb ab', 'key none'] as const;

/** A bar of the source and where the lanes break. */
interface PlannedBar extends BarTask {
  /** Typed before its first event, in the first lane. */
  readonly change: string;
  /** The barline at its end; empty where the system breaks it. */
  readonly barline: string;
}

class Score {
  private readonly lines: string[] = [];
  private readonly frame: Frame;
  private readonly places: string[] = [];
  private readonly sections: string[] = [];
  private carries = new Map<string, VoiceCarry>();
  private meter: readonly [string, number] = meters[0];
  private firstSystem = true;
  private page = 1;

  constructor(
    private readonly chance: Chance,
    private readonly wanted: Required<Wanted>,
  ) {
    this.frame = chance.pick(frames);
  }

  write(): string {
    const pieces = this.chance.happens(20) ? 2 : 1;
    if (this.chance.happens(30)) this.lines.push('', `page "${this.page}r"`);
    for (let i = 0; i < pieces; i++) this.piece(pieces > 1 ? `Piece ${i + 1}` : undefined);
    return `${[...this.head(), ...this.lines].join('\n')}\n`;
  }

  // ─── statements ──────────────────────────────────────────────────────────────────────────────────────────────────

  private head(): string[] {
    const { chance, frame } = this;
    const isNoted = this.lines.some((line) => line.includes('*n1'));
    const note = [
      'note n1 kind reading by TK certainty medium evidence "the ink"',
      '  : "Blotted; the second stroke is paler"',
    ];
    const some = (percent: number, ...lines: string[]): string[] => (chance.happens(percent) ? lines : []);
    return [
      'bentside 1',
      '',
      ...some(80, 'title "Passages that never were"'),
      'source K "Thornmere Keyboard Book, f. 9v"',
      'source L "A loose leaf, ""the second state"""',
      ...(this.lines.some((line) => line.includes('K.2')) ? ['hand K.2 "paler ink"'] : []),
      ...(isNoted ? ['editor TK "Editor of the Thornmere Keyboard Book"'] : []),
      '',
      'reading french "Signs after the table of 1689"',
      '  takes K',
      ...some(50, '  signs anglebert-1689'),
      ...some(50, '  practice overdot'),
      'reading plain "As the loose leaf has it"',
      ...some(50, '  // nothing is stretched'),
      '  takes L',
      '',
      'signs anglebert-1689',
      ...some(60, 'instrument harpsichord compass c1-f6', '  manual upper stops 8', '  manual lower stops 8 4'),
      ...some(50, 'pitch a4 = 415   // chamber pitch'),
      ...some(50, chance.pick(['tuning meantone 1/4 wolf g#-eb', 'tuning meantone 1/6', 'tuning house'] as const)),
      'temperament house',
      '  c-g -1/4 pc',
      '  d-a -1/4 pc',
      '  a-e rest',
      ...some(50, 'tempo 2 at 50'),
      ...some(60, `accidentals ${chance.pick(['note', 'bar', 'group'] as const)}`),
      ...some(20, 'beaming 8 by 4'),
      ...some(30, 'practice inegal 8 3:2 stepwise'),
      '',
      ...frame.staves.map((name) => `stave ${name} lines ${chance.pick([5, 5, 6] as const)}`),
      ...frame.voices.map(({ name, stave, stems }) => `voice ${name} ${stave}${stems ? ` stems ${stems}` : ''}`),
      '',
      ...(isNoted ? note : []),
      ...(this.places.length > 1 && chance.happens(50) ? [`link ${this.places.slice(0, 2).join(' ')}`] : []),
      ...some(
        30,
        'table own from anglebert-1689',
        '  zz "shake" when rising : on beat, (+1 0) repeated at 11 a second, hold 1/4',
      ),
    ];
  }

  private piece(name: string | undefined): void {
    if (name !== undefined) this.lines.push('', `piece "${name}"`);
    this.carries = new Map(
      this.frame.voices.map((voice) => [voice.name, freshCarry((voice.range.low + voice.range.high) >> 1)]),
    );
    this.meter = this.chance.pick(meters);
    this.firstSystem = true;
    const start = this.lines.length;
    const earlier = this.sections.length;
    if (this.wanted.free && this.chance.happens(10)) this.freeSystem();
    else this.systems();
    const sections = this.sections.slice(earlier);
    if (sections.length > 0 && this.chance.happens(50)) this.lines.splice(start, 0, `order ${sections.join(' ')}`);
  }

  private systems(): void {
    const systems = this.chance.between(1, 4);
    const open = { units: 0 };
    for (let i = 0; i < systems; i++) this.system(i === systems - 1, open);
  }

  private systemHead(kind: string): void {
    const { chance } = this;
    const restated = this.firstSystem || chance.happens(20);
    const stated = this.frame.staves.map((stave) => `${stave} ${chance.pick(clefs[stave] ?? ['G2'])}`);
    const key = this.firstSystem ? chance.pick(keys) : '';
    const meter = this.firstSystem ? `meter ${this.meter[0]}` : '';
    const at = chance.happens(5) ? 'at 120,340,1800,410' : '';
    const clauses = [...(restated ? stated : []), key, meter, at].filter((clause) => clause !== '');
    this.lines.push([`system${kind}`, ...clauses].join('  '));
    this.firstSystem = false;
  }

  /** @param inBar the system before ends inside a bar, where no section begins */
  private before(inBar: boolean): void {
    const { chance } = this;
    this.lines.push('');
    if (chance.happens(15))
      this.lines.push(`page "${++this.page}r"${chance.happens(20) ? ' image "scans/1.jpg"' : ''}`);
    if (chance.happens(15) && !inBar) {
      const section = `S${this.sections.length + 1}`;
      this.sections.push(section);
      this.lines.push(`section ${section}`);
    }
    if (chance.happens(15)) this.lines.push('// full close on d, "bar" 6 | and more');
  }

  // ─── systems ─────────────────────────────────────────────────────────────────────────────────────────────────────

  private system(isLast: boolean, open: { units: number }): void {
    this.before(open.units > 0);
    const isLoose = this.wanted.loose && open.units === 0 && this.chance.happens(6);
    this.systemHead(isLoose ? ' loose' : '');
    const bars = this.plan(isLast, isLoose, open);
    const lanes = isLoose ? this.looseLanes(bars, isLast) : this.lanes(bars);
    this.lines.push(...lanes);
  }

  /** The bars of a system; `open` holds what the next system still has of the last one. */
  private plan(isLast: boolean, isLoose: boolean, open: { units: number }): PlannedBar[] {
    const { chance } = this;
    const count = chance.between(1, 4);
    const planned: PlannedBar[] = [];
    for (let i = 0; i < count; i++) {
      const first = i === 0;
      const last = i === count - 1;
      const begun = first && open.units > 0;
      let change = '';
      if (i > 0 && !isLoose && chance.happens(6)) {
        this.meter = chance.pick(meters);
        change = `(now meter ${this.meter[0]})`;
      } else if (i > 0 && !isLoose && chance.happens(4))
        change = chance.pick(['(now key f#)', '(now key none)', '(now tempo 4 at 63)'] as const);
      const units = begun ? open.units : this.meter[1];
      if (first) open.units = 0;
      const isSplit = last && !isLast && !isLoose && !begun && units % 32 === 0 && chance.happens(12);
      if (isSplit) open.units = units / 2;
      const barline = isSplit ? '' : last && isLast ? '|||' : this.barline();
      planned.push({
        units: isSplit ? units / 2 : units,
        whole: !begun && !isSplit,
        closed: barline !== '' && barline !== '|' && barline !== '|[]',
        next: 0,
        change,
        barline,
      });
    }
    if (isLast && !isLoose && count > 2 && chance.happens(20)) this.endings(planned);
    return planned.map((bar, i) => ({
      ...bar,
      next: planned[i + 1]?.change === '' ? (planned[i + 1]?.units ?? 0) : 0,
    }));
  }

  /** The last two bars become a first and a second ending; nothing leads into them. */
  private endings(planned: PlannedBar[]): void {
    const [before, first, second] = planned.slice(-3);
    if (before === undefined || first === undefined || second === undefined) return;
    if (!before.whole || first.change !== '' || second.change !== '' || before.barline === '') return;
    planned.splice(
      -3,
      3,
      { ...before, closed: true },
      { ...first, change: '(ending 1)', barline: ':||', closed: true },
      { ...second, change: '(ending 2)' },
    );
  }

  private barline(): string {
    return this.chance.happens(12) ? this.chance.pick(['||', ':||', '||:', ':||:', '|[]'] as const) : '|';
  }

  private writer(voice: Voice, options: boolean, carry = this.carries.get(voice.name)): LaneWriter {
    const witnesses = options && this.wanted.options ? ['K', 'L'] : [];
    const { staves } = this.frame;
    const stave = staves.indexOf(voice.stave);
    const neighbour = stave > 0 ? 'up' : stave + 1 < staves.length ? 'down' : undefined;
    const allowed = { witnesses, places: this.places, brackets: true, open: true };
    return new LaneWriter(this.chance, carry ?? freshCarry(MIDDLE_C), voice.range, allowed, neighbour);
  }

  private lanes(bars: readonly PlannedBar[]): string[] {
    const { chance } = this;
    const breaks = bars.length > 2 && chance.happens(15) ? chance.between(1, bars.length - 1) : bars.length;
    return this.frame.voices.flatMap((voice, index) => {
      const isFirst = index === 0;
      const hasWitness = this.mayHaveWitness(voice, isFirst, bars) && chance.happens(8);
      const writer = this.writer(voice, !hasWitness);
      const figures: string[] = [];
      const syllables: string[] = [];
      let before = { ...writer.counts };
      const count = (): void => {
        figures.push(this.figures(writer.counts.figures - before.figures));
        syllables.push(this.syllables(writer.counts.syllables - before.syllables));
        before = { ...writer.counts };
      };
      let second: string | undefined;
      const written = bars.map((bar, i) => {
        const next = bars[i + 1];
        let text = second;
        second = undefined;
        if (text === undefined && next !== undefined && this.mayBeOne(bar, next, writer) && chance.happens(4)) {
          [text, second] = writer.twoBars(bar.units, next.units, count);
        } else {
          // What L has instead of a bar must not lack the end of what begins in it.
          text ??= writer.bar(hasWitness ? { ...bar, closed: true } : bar);
          count();
        }
        return isFirst && bar.change !== '' ? `${bar.change} ${text}` : text;
      });
      const custos = chance.happens(5) ? ' (custos g4)' : '';
      const shapes = bars.map(({ barline }) => (isFirst || chance.happens(50) || barline === '' ? barline : '|'));
      const lane = (indent: string, name: string, texts: readonly string[]): string[] =>
        this.broken(`${indent}${name}`, texts, shapes, breaks);
      const wantsFigures = this.wanted.subLanes && voice.name === 'basse' && chance.happens(25);
      const wantsText = this.wanted.subLanes && isFirst && chance.happens(20);
      return [
        ...lane(
          '  ',
          voice.name,
          written.map((text, i) => (i === written.length - 1 ? text + custos : text)),
        ),
        ...(wantsFigures ? lane('    ', 'fig', figures) : []),
        ...(wantsText ? lane('    ', 'text', syllables) : []),
        ...(hasWitness ? lane('  ', `${voice.name} L`, this.witness(voice, bars)) : []),
      ];
    });
  }

  /** Whether options may hold two bars and the barline between them. */
  private mayBeOne(bar: PlannedBar, next: PlannedBar, writer: LaneWriter): boolean {
    return (
      writer.isAtRest &&
      bar.whole &&
      next.whole &&
      bar.barline === '|' &&
      next.change === '' &&
      !bar.closed &&
      !next.closed
    );
  }

  /** A witness lane takes the place of whole bars, with all that is typed in them. */
  private mayHaveWitness(voice: Voice, isFirst: boolean, bars: readonly PlannedBar[]): boolean {
    const { tied, curves, over } = this.carries.get(voice.name) ?? freshCarry(MIDDLE_C);
    return (
      this.wanted.options &&
      bars.every(({ whole, change }) => whole && !(isFirst && change !== '')) &&
      tied === undefined &&
      curves === 0 &&
      over === 0
    );
  }

  /** A lane on one line, or on two from the same bar in all lanes of the system. */
  private broken(name: string, texts: readonly string[], shapes: readonly string[], breaks: number): string[] {
    const piece = (from: number, to: number): string =>
      texts
        .slice(from, to)
        .map((text, i) => `${text} ${shapes[from + i] ?? ''}`)
        .join(' ');
    const comment = this.chance.happens(5) ? '  // sic' : '';
    const open = name.trim().length > 4 && this.chance.happens(2) ? "|'renvoi" : '|';
    const first = `${name} ${open} ${piece(0, breaks)}${comment}`.trimEnd();
    if (breaks >= texts.length) return [first];
    const space = ' '.repeat(this.chance.below(8) + 1);
    const between = this.chance.happens(20) ? ['  // the paper is torn'] : [];
    return [first, ...between, `${space}| ${piece(breaks, texts.length)}`.trimEnd()];
  }

  /** What L has in place of a lane; an empty bar is as in the lane above. */
  private witness(voice: Voice, bars: readonly PlannedBar[]): string[] {
    const carry = freshCarry((voice.range.low + voice.range.high) >> 1);
    const writer = this.writer(voice, false, carry);
    return bars.map(({ units, whole }) => {
      if (this.chance.happens(50)) {
        writer.refresh();
        return '';
      }
      return writer.bar({ units, whole, closed: true, next: 0 });
    });
  }

  private figures(count: number): string {
    const figure = (): string => this.chance.pick(['_', '6', '6/5', '5,6', '#', '6+', '[6]', '7', '='] as const);
    return Array.from({ length: count }, figure).join(' ');
  }

  private syllables(count: number): string {
    const syllable = (): string => this.chance.pick(['la', 'glo-', 'ri-', 'a', '_', '=', '"of the"', 'é-'] as const);
    return Array.from({ length: count }, syllable).join(' ');
  }

  /** Lanes whose barlines need not agree, of one length in all. */
  private looseLanes(bars: readonly PlannedBar[], isLast: boolean): string[] {
    const total = bars.reduce((sum, { units }) => sum + units, 0);
    return this.frame.voices.map((voice) => {
      const writer = this.writer(voice, false);
      const parts = this.chance.happens(50) ? bars.map(({ units }) => units) : [total];
      const texts = parts.map((units, i) =>
        writer.bar({ units, whole: false, closed: i === parts.length - 1, next: 0 }),
      );
      return `  ${voice.name} | ${texts.join(' | ')} ${isLast ? '|||' : '|'}`;
    });
  }

  private freeSystem(): void {
    this.before(false);
    const stated = this.frame.staves.map((stave) => `${stave} ${this.chance.pick(clefs[stave] ?? ['G2'])}`);
    this.lines.push(['system free', ...stated].join('  '));
    const [voice] = this.frame.voices;
    const count = this.chance.between(2, 12);
    const carry = freshCarry(MIDDLE_C + 4);
    const note = (): string => {
      carry.step = Math.min(Math.max(carry.step + this.chance.between(-3, 3), MIDDLE_C), MIDDLE_C + 12);
      const octave = Math.floor(carry.step / 7);
      return `${'cdefgab'[carry.step % 7]}${octave}`;
    };
    const notes = Array.from({ length: count }, (_, i) => note() + (i === 0 ? "'u" : i === count - 1 ? "'." : ''));
    this.lines.push(`  ${voice?.name} | ${notes.join(' ')} |||`);
  }
}

const everything: Required<Wanted> = { loose: true, free: true, options: true, subLanes: true };

/** The score that follows from a list of numbers; the shorter the list, the plainer its end. */
export const scoreFrom = (numbers: readonly number[], wanted: Wanted = {}): string =>
  new Score(new Chance(numbers), { ...everything, ...wanted }).write();

/** The score that follows from a seed. */
export const scoreOfSeed = (seed: number, wanted: Wanted = {}): string => scoreFrom(numbersOf(seed, 4000), wanted);

/** Whole valid files. Shrinking makes them shorter and plainer. */
export const anyScore = (wanted: Wanted = {}): fc.Arbitrary<string> =>
  fc.array(fc.nat({ max: 0xffff }), { maxLength: 3000, size: 'max' }).map((numbers) => scoreFrom(numbers, wanted));
