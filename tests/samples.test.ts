/**
 * The samples as music: sound in proof, and in two voices what teachers of counterpoint ask (common practice).
 *
 * Parallel perfect fifths and octaves between the outer voices and unexplained augmented leaps are looked for in `written`,
 * in every reading and in every witness. An exception is a row below with its reason, which also stands as a comment in the sample.
 */
import { describe, expect, it } from 'vitest';
import { add, compare, format, type Time, time } from '../grammar/time';
import { foundWhenPlayed } from '../server/document/decided';
import type { NoteMember, Piece, Score, Section } from '../server/score/score';
import { curvesOf, eventsOf, type PlacedEnd } from '../server/score/walk';
import { lane, passage, scoreOf, sounding } from './helpers/music';
import { sampleAnalysis, sampleNames, sampleText } from './helpers/samples';

/** Exceptions, each with the words of the sample's comment that explain it. */
const EXPLAINED: readonly { sample: string; what: string; comment: string }[] = [
  {
    sample: 'ricercar.bent',
    what: 'Consecutive fifths alto/basso, bar 36 (e4-f4 over a2-bb2): copyist’s or yours?',
    comment: 'e makes fifths with the basso; P has g',
  },
];

interface Sounding {
  readonly onset: Time;
  readonly end: Time;
  readonly bar: string;
  readonly member: NoteMember;
}

/**
 * Notes of a voice that take time, ties joined; of a chord the highest (`top`) or the lowest. In a free system the one lane
 * holds several voices: it is left out.
 */
function melody(piece: Piece, voice: number, top: boolean): Sounding[] {
  const found: Sounding[] = [];
  for (const { event, onset, bar, system } of eventsOf(piece)) {
    if (event.voice !== voice || event.kind !== 'note' || event.small !== undefined) continue;
    if (system.score.kind === 'free') continue;
    const sorted = [...event.members].sort((a, b) => a.midi - b.midi);
    const member = top ? sorted.at(-1) : sorted[0];
    if (member === undefined) continue;
    const before = found.at(-1);
    const end = add(onset, event.duration);
    const goesOn = member.tiedFrom && before?.member.midi === member.midi && compare(before.end, onset) === 0;
    if (goesOn) found[found.length - 1] = { ...before, end };
    else found.push({ onset, end, bar: bar.number, member });
  }
  return found;
}

const at = (notes: readonly Sounding[], time: Time): Sounding | undefined =>
  notes.find((note) => compare(note.onset, time) <= 0 && compare(time, note.end) < 0);

const PERFECT = new Map([
  [0, 'octaves'],
  [7, 'fifths'],
]);

/** The outer voices at one moment. */
interface Pair {
  readonly high: Sounding;
  readonly low: Sounding;
  /** Both are struck. */
  readonly common: boolean;
}

/** The outer voices whenever one of them begins or ends; undefined where one rests, which ends what could be parallel. */
function pairsOf(upper: readonly Sounding[], lower: readonly Sounding[]): (Pair | undefined)[] {
  const times = [...upper, ...lower].flatMap((note) => [note.onset, note.end]).sort(compare);
  const pairs: (Pair | undefined)[] = [];
  for (const time of times) {
    const [high, low] = [at(upper, time), at(lower, time)];
    const last = pairs.at(-1);
    if (high === undefined || low === undefined) pairs.push(undefined);
    else if (last?.high !== high || last.low !== low) {
      pairs.push({ high, low, common: compare(high.onset, low.onset) === 0 });
    }
  }
  return pairs;
}

const interval = ({ high, low }: Pair): number => high.member.midi - low.member.midi;

/** Both voices move, and to the perfect interval from which they came. */
function parallel(before: Pair, pair: Pair): string | undefined {
  const stays = before.high.member.midi === pair.high.member.midi || before.low.member.midi === pair.low.member.midi;
  const kind = PERFECT.get(interval(pair) % 12);
  return !stays && kind !== undefined && (interval(before) - interval(pair)) % 12 === 0
    ? `parallel ${kind} in bar ${pair.high.bar}`
    : undefined;
}

/** Both voices rise, or both fall. */
const sameWay = (before: Pair, pair: Pair): boolean =>
  before.high.member.midi < pair.high.member.midi === before.low.member.midi < pair.low.member.midi;

/**
 * Parallels from each moment to the next, by contrary motion too (a fifth to a twelfth), and from each common attack to
 * the next whatever moves between, there only if both voices go the same way.
 */
function parallels(upper: readonly Sounding[], lower: readonly Sounding[]): string[] {
  const found: (string | undefined)[] = [];
  let before: Pair | undefined;
  let attack: Pair | undefined;
  for (const pair of pairsOf(upper, lower)) {
    if (pair !== undefined && before !== undefined) found.push(parallel(before, pair));
    if (pair?.common === true && attack !== undefined && sameWay(attack, pair)) found.push(parallel(attack, pair));
    before = pair;
    if (pair === undefined) attack = undefined;
    else if (pair.common) attack = pair;
  }
  return found.filter((what) => what !== undefined);
}

const steps = 'cdefgab';
/** Semitones of major and perfect intervals by their size in steps. */
const MAJOR = [0, 2, 4, 5, 7, 9, 11];

/** Leaps that are a semitone wider than major or perfect. */
function augmentedLeaps(notes: readonly Sounding[]): string[] {
  return notes.flatMap((note, index) => {
    const before = notes[index - 1];
    if (before === undefined) return [];
    const height = ({ member }: Sounding): number => member.octave * 7 + steps.indexOf(member.spelling.letter);
    const size = Math.abs(height(note) - height(before));
    const wide = Math.abs(note.member.midi - before.member.midi);
    const usual = (MAJOR[size % 7] ?? 0) + 12 * Math.floor(size / 7);
    return size > 0 && wide > usual ? [`augmented leap in bar ${note.bar}`] : [];
  });
}

const unexplained = (sample: string, text: string, found: readonly string[]): string[] =>
  [...new Set(found)].filter(
    (what) => !EXPLAINED.some((one) => one.sample === sample && one.what === what && text.includes(one.comment)),
  );

/** The end of a section: its last bar's number, and the text of the system that holds it with the comments above. */
interface End {
  readonly section: string;
  readonly bar: number;
  readonly text: string;
}

function finalBar(score: Score, piece: Piece, section: Section): End {
  const last = piece.bars[section.endBar - 1];
  const system = piece.systems[last?.system ?? 0];
  const { text, blocks } = score.tree;
  const block = blocks[system?.block ?? 0];
  const from = block?.offset ?? 0;
  // Comments above a system stand after the last lane of the block before.
  const above = text.slice(0, from).split('\n').reverse();
  const comments = above.slice(
    0,
    above.findIndex((line) => line.includes(' | ')),
  );
  return {
    section: section.name,
    bar: Number.parseInt(last?.number ?? '', 10),
    text: [...comments.reverse(), text.slice(from, from + (block?.length ?? 0))].join('\n'),
  };
}

/** A comment there says `cadence` or `close` and the bar. */
const namesCadence = ({ bar, text }: End): boolean =>
  text
    .split('\n')
    .some((line) => new RegExp(`//.*\\b(?:cadence|close)\\b.*\\bbars? (?:\\d+ and )?${bar}\\b`, 'i').test(line));

/** What `find` finds in each piece of a score. */
const inPieces = (score: Score, find: (piece: Piece) => readonly string[]): string[] => score.pieces.flatMap(find);

const highest = 0;
const lowest = (score: Score): number => score.environment.voices.length - 1;

/** Letter and sharp of what sounds. */
const named = (note: Sounding | undefined): string =>
  `${note?.member.spelling.letter ?? '-'}${note?.member.alteration === 1 ? '#' : ''}`;

/** A voice of the first piece, of chords the highest note. */
function lineOf(score: Score, voice: string): Sounding[] {
  const [piece] = score.pieces;
  const index = score.environment.voices.findIndex((one) => one.name === voice);
  return piece === undefined ? [] : melody(piece, index, true);
}

/** The first notes that a voice strikes from the beginning of a bar on, the bar counted from 1. */
function struckFrom(score: Score, voice: string, bar: number, count: number): string {
  const start = score.pieces[0]?.bars[bar - 1]?.onset ?? time(0);
  const notes = lineOf(score, voice).filter((note) => compare(note.onset, start) >= 0);
  return notes.slice(0, count).map(named).join(' ');
}

describe.each(sampleNames)('%s', (name) => {
  const text = sampleText(name);
  const analysis = sampleAnalysis(name);

  it('is sound: no finding of error or warning in any reading', () => {
    const grave = analysis.findings().filter(({ level }) => level === 'error' || level === 'warning');
    expect(grave.map((finding) => finding.message)).toEqual([]);
  });

  it('states no practice that finds nothing to act on', () => {
    const idle = foundWhenPlayed(analysis).filter(({ code }) => code === 'practice-idle');
    expect(idle.map((finding) => finding.message)).toEqual([]);
  });

  it('has no consecutive fifths, octaves or unisons between any two voices', () => {
    const told = analysis.findings().filter(({ code }) => code === 'consecutive-perfects');
    // In which readings it stands is said before a colon.
    expect(
      unexplained(
        name,
        text,
        told.map(({ message }) => message.replace(/^In [^:]*: /, '')),
      ),
    ).toEqual([]);
  });

  it.each([...analysis.choices])('has no parallel fifths or octaves between the outer voices as %s reads', (choice) => {
    const score = scoreOf(analysis, choice);
    const found = inPieces(score, (piece) => {
      const [upper, lower] = [melody(piece, highest, true), melody(piece, lowest(score), false)];
      expect(Math.min(upper.length, lower.length)).toBeGreaterThan(0);
      return parallels(upper, lower);
    });
    expect(unexplained(name, text, found)).toEqual([]);
  });

  it.each([...analysis.choices])('has no augmented leap in any voice as %s reads', (choice) => {
    const score = scoreOf(analysis, choice);
    const found = inPieces(score, (piece) =>
      score.environment.voices.flatMap((voice, index) =>
        augmentedLeaps(melody(piece, index, true)).map((what) => `${voice.name}: ${what}`),
      ),
    );
    expect(unexplained(name, text, found)).toEqual([]);
  });

  it('names the cadence that ends each section in a comment by its final bar', () => {
    const score = scoreOf(analysis);
    const ends = score.pieces.flatMap((piece) =>
      piece.sections.filter((one) => one.within === undefined).map((section) => finalBar(score, piece, section)),
    );
    expect(ends.length).toBeGreaterThan(0);
    expect(ends.filter((end) => !namesCadence(end))).toEqual([]);
  });
});

describe('the rules themselves', () => {
  const outer = (high: string, low: string): string[] => {
    const score = scoreOf(passage(`system upper C1 lower F4 meter C\n dessus | ${high} |||\n basse | ${low} |||\n`));
    const found = inPieces(score, (piece) =>
      parallels(melody(piece, highest, true), melody(piece, lowest(score), false)),
    );
    return [...new Set(found)];
  };
  const leaps = (music: string): string[] =>
    inPieces(scoreOf(lane(music)), (piece) => augmentedLeaps(melody(piece, highest, true)));

  it('find fifths and octaves, at once and over a passing note', () => {
    expect(outer('2 g4 a', '2 c3 d')).toEqual(['parallel fifths in bar 1']);
    expect(outer('2 c5 d', '2 c3 d')).toEqual(['parallel octaves in bar 1']);
    expect(outer('4 g4 f 2 a', '2 c3 d')).toEqual(['parallel fifths in bar 1']);
    expect(outer('2 g4 d5', '2 c3 g2')).toEqual(['parallel fifths in bar 1']);
    expect(outer('4 g4 r 2 a', '2 c3 d')).toEqual([]);
    expect(outer('8 g5 f 4 d', '4 g2 d3')).toEqual([]);
  });
  it('let sixths, repeated fifths and a fifth by contrary motion from a sixth be', () => {
    expect(outer('2 a4 b', '2 c3 d')).toEqual([]);
    expect(outer('2 g4 g', '2 c3 c')).toEqual([]);
    expect(outer('2 c5 b4', '2 e3 e')).toEqual([]);
  });
  it('find an augmented second, fourth and fifth, and let the diminished ones be', () => {
    expect(leaps('2 eb5 f#')).toHaveLength(1);
    expect(leaps('2 f4 bn')).toHaveLength(1);
    expect(leaps('2 c4 g#')).toHaveLength(1);
    expect(leaps('2 bn4 f5')).toEqual([]);
    expect(leaps('2 g#4 c5')).toEqual([]);
  });
});

describe('the overture', () => {
  const analysis = sampleAnalysis('overture.bent');
  it('has sixty bars or more, two witnesses and two readings', () => {
    expect(scoreOf(analysis).pieces[0]?.bars.length).toBeGreaterThanOrEqual(60);
    expect(analysis.environment.sources).toHaveLength(2);
    expect(analysis.environment.readings).toHaveLength(2);
  });
});

describe('the allemande', () => {
  const analysis = sampleAnalysis('allemande.bent');
  it('has nine and ten bars after its upbeats and more than 25 signs', () => {
    const [piece] = scoreOf(analysis).pieces;
    expect(piece?.bars.at(-1)?.number).toBe('19');
    expect(piece?.bars.some((bar) => bar.number === '9a')).toBe(true);
    const signs = [...(piece === undefined ? [] : eventsOf(piece))].flatMap(({ event }) =>
      event.members.flatMap((member) => member.marks.filter((mark) => mark.form.type === 'sign')),
    );
    expect(signs.length).toBeGreaterThanOrEqual(25);
  });
});

describe('the divisions', () => {
  const analysis = sampleAnalysis('divisions.bent');
  const heads = ['g', 'c g', 'd', 'g', 'c', 'g d', 'c d', 'g'];
  it('have the ground in each of their six strains, at the head of its bar or half bar', () => {
    for (const choice of analysis.choices) {
      const score = scoreOf(analysis, choice);
      const [piece] = score.pieces;
      const bass = piece === undefined ? [] : melody(piece, lowest(score), false);
      const found = (piece?.bars ?? []).map(({ onset, number }) => {
        const halves = [onset, add(onset, time(1, 2))].slice(0, heads[(Number(number) - 1) % 8]?.split(' ').length);
        return halves.map((half) => at(bass, half)?.member.spelling.letter).join(' ');
      });
      expect(found).toEqual([...heads, ...heads, ...heads, ...heads, ...heads, ...heads]);
    }
  });
  it('stand on two staves of six lines', () => {
    expect(analysis.environment.staves.map((stave) => stave.lines)).toEqual([6, 6]);
  });
});

describe('the ricercar', () => {
  const score = scoreOf(sampleAnalysis('ricercar.bent'));
  const bars = score.pieces[0]?.bars ?? [];
  const from = (voice: string, bar: number, count: number): string => struckFrom(score, voice, bar, count);

  it('has forty breves', () => {
    expect(bars.map((bar) => bar.duration)).toEqual(Array.from({ length: 40 }, () => time(2)));
  });
  it('brings subject, real answer, subject, tonal answer', () => {
    expect(from('alto', 1, 5)).toBe('d a f f# g');
    expect(from('canto', 4, 5)).toBe('a e c c# d');
    expect(from('tenore', 7, 5)).toBe('d a f f# g');
    expect(from('basso', 9, 5)).toBe('a d c c# d');
  });
  it('turns the subject upside down and doubles its values', () => {
    expect(from('canto', 13, 5)).toBe('a d f# f e');
    expect(from('alto', 20, 5)).toBe('e a c# c b');
    expect(from('tenore', 25, 9)).toBe('d a f f# g a g f e');
  });
  it('has three black semibreves in the time of two in both outer voices at the close', () => {
    const close = bars[38]?.onset ?? time(0);
    expect(at(lineOf(score, 'basso'), add(close, time(2, 3)))?.onset).toEqual(add(close, time(2, 3)));
    expect(at(lineOf(score, 'canto'), add(close, time(4, 3)))?.onset).toEqual(add(close, time(4, 3)));
  });
});

describe('the toccata', () => {
  const analysis = sampleAnalysis('toccata.bent');
  const score = scoreOf(analysis);
  const [piece] = score.pieces;

  it('has no two bars of one length where it is free', () => {
    const free = piece?.bars.filter((bar) => piece.systems[bar.system]?.score.kind === 'loose') ?? [];
    const lengths = free.map((bar) => format(bar.duration));
    expect(lengths.length).toBeGreaterThan(8);
    expect(new Set(lengths).size).toBe(lengths.length);
  });
  it('brings its subject three times, on a, on e, on a', () => {
    expect(struckFrom(score, 'alto', 8, 10)).toBe('a a g# a b a b c d b');
    expect(struckFrom(score, 'canto', 10, 10)).toBe('e e d# e f# e f# g a f#');
    expect(struckFrom(score, 'basso', 13, 10)).toBe('a a g# a b a b c d b');
  });
  it.each([
    { bar: '3', suspended: 'alto', seventh: 'canto', fourth: time(3, 2), third: time(7, 4) },
    { bar: '6', suspended: 'tenore', seventh: 'alto', fourth: time(1), third: time(5, 4) },
    { bar: '25', suspended: 'canto', seventh: 'alto', fourth: time(1), third: time(3, 2) },
  ])('closes over e with the fourth falling to its third beside a seventh, bar $bar', (close) => {
    const start = piece?.bars.find(({ number }) => number === close.bar)?.onset ?? time(0);
    const letters = (voice: string): string[] =>
      [close.fourth, close.third].map((offset) => named(at(lineOf(score, voice), add(start, offset))));
    expect([letters('basso'), letters(close.suspended), letters(close.seventh)]).toEqual([
      ['e', 'e'],
      ['a', 'g#'],
      ['d', 'd'],
    ]);
  });
  it('stands on staves of six and eight lines', () => {
    expect(analysis.environment.staves.map((stave) => stave.lines)).toEqual([6, 8]);
  });
});

describe('the lamento', () => {
  const analysis = sampleAnalysis('lamento.bent');
  const [lamento, ritornello] = scoreOf(analysis).pieces;
  /** Bars in which a note so spelt is struck, by any voice. */
  const barsWith = (letter: string, alteration: number): number[] => {
    const events = lamento === undefined ? [] : [...eventsOf(lamento)];
    const bars = events
      .filter(({ event }) =>
        event.members.some((one) => one.spelling.letter === letter && one.alteration === alteration),
      )
      .map(({ bar }) => Number.parseInt(bar.number, 10));
    return [...new Set(bars)].sort((a, b) => a - b);
  };

  it('is followed by a ritornello of twelve bars', () => {
    expect([lamento?.bars.length, ritornello?.bars.length]).toEqual([38, 12]);
  });
  it('wants A flat in its outer strains and G sharp in the middle one, as few tunings allow', () => {
    const [flats, sharps] = [barsWith('a', -1), barsWith('g', 1)];
    expect(sharps).toEqual([18, 20, 24, 28]);
    expect(flats.every((bar) => bar <= 16 || bar >= 29)).toBe(true);
    expect(flats).toEqual(expect.arrayContaining([3, 7, 11, 15, 33, 35]));
  });
  it('has the falling tetrachord in its bass wherever the ground is heard', () => {
    const basso = melody(lamento as Piece, 3, false).filter(({ bar }) => Number(bar) <= 8);
    expect(basso.map(({ member }) => member.midi - 36)).toEqual([12, 10, 8, 7, 12, 10, 8, 7]);
  });
});

describe('the gigue', () => {
  const analysis = sampleAnalysis('gigue.bent');
  const [dotted, triplet] = [time(3, 8), time(1, 6)];
  /** Bars in which one voice has dotted crotchets and the other of the outer two triplets of crotchets. */
  const against = (choice: string): string[] => {
    const score = scoreOf(analysis, choice);
    return score.pieces.flatMap((piece) => {
      const having = (voice: number, length: Time): string[] =>
        melody(piece, voice, true)
          .filter((note) => compare(add(note.onset, length), note.end) === 0)
          .map(({ bar }) => bar);
      const [high, low] = [highest, lowest(score)];
      const pairs = [having(high, dotted).filter((bar) => having(low, triplet).includes(bar))];
      pairs.push(having(low, dotted).filter((bar) => having(high, triplet).includes(bar)));
      return [...new Set(pairs.flat())].sort((a, b) => Number(a) - Number(b));
    });
  };

  it('has two strains of twelve and fourteen bars, each with two endings', () => {
    const [piece] = scoreOf(analysis).pieces;
    const endings = piece?.bars.filter((bar) => bar.ending !== undefined);
    expect(endings?.map((bar) => [Number.parseInt(bar.number, 10), bar.ending])).toEqual([
      [12, 1],
      [12, 2],
      [26, 1],
      [26, 2],
    ]);
  });
  it('sets dotted pairs against triplets in four places, of which the loose leaves know three', () => {
    expect(against('K')).toEqual(['7', '11', '18', '23']);
    expect(against('L')).toEqual(['7', '11', '23']);
  });
});

describe('the prelude', () => {
  const analysis = sampleAnalysis('prelude.bent');
  const piece = scoreOf(analysis).pieces[0] as Piece;
  const free = [...eventsOf(piece)].filter(({ system }) => system.score.kind === 'free');
  const upper = 0;
  /** Where the hands begin again from the lower stave: the basses, and the last chord. */
  const basses = free.filter(
    ({ event, system }, index) =>
      event.stave !== upper && (free[index - 1]?.system !== system || free[index - 1]?.event.stave === upper),
  );
  /** Place of a curve's end among the events of the free systems. */
  const placeOf = (end: PlacedEnd | undefined): number =>
    free.findIndex(({ system, index }) => system === end?.system && index === end.end.event);

  it('has the basses F F F F F# G G C, six measured bars, then E F B flat B natural C F', () => {
    const names = basses.map(({ event }) => event.members.slice(0, 1).map(sounding).join(''));
    expect(names.join(' ')).toBe('f2 f2 f2 f2 f#2 g2 g1 c2 e2 f2 bb1 b1 c2 f2 f2');
    expect(piece.bars.filter((bar) => piece.systems[bar.system]?.score.kind === 'measured')).toHaveLength(6);
  });
  it('holds the notes of each chord to the next bass and no other note, but for sighs of two notes', () => {
    const heads = new Set(basses.map((bass) => free.indexOf(bass)));
    const curves = curvesOf(piece).filter(
      ({ kind, start, end }) => kind === 'u' && start !== undefined && end?.end.onBarline === false,
    );
    const places = curves.map(({ start, end }) => ({ from: placeOf(start), to: placeOf(end) }));
    const sighs = places.filter(({ from, to }) => to === from + 1 && !heads.has(to));
    const tenues = places.filter((one) => !sighs.includes(one));
    expect(sighs.length).toBeGreaterThanOrEqual(5);
    expect(tenues.length).toBeGreaterThan(70);
    expect(tenues.filter(({ to }) => !heads.has(to))).toEqual([]);
    const links = tenues.filter(({ from }) => compare(free[from]?.event.duration ?? time(0), time(1)) < 0);
    expect(links).toEqual([]);
  });
  it('has its one highest note over the B natural of the bass', () => {
    const heights = free.flatMap(({ event }) => event.members.map(({ midi }) => midi));
    const top = Math.max(...heights);
    const peak = free.findIndex(({ event }) => event.members.some(({ midi }) => midi === top));
    expect(heights.filter((midi) => midi === top)).toHaveLength(1);
    expect(
      basses
        .filter((bass) => free.indexOf(bass) < peak)
        .at(-1)
        ?.event.members.map(sounding),
    ).toEqual(['b1']);
  });
});

describe('the leaves', () => {
  const score = scoreOf(sampleAnalysis('leaves.bent'));

  // O: three semibreves (from memory); the others Hotteterre, 1719, and Quantz, 1752, chapter V.
  it('have the bars of their signs after an intonation of sixteen semibreves', () => {
    const lengths = score.pieces.map(({ bars }) => format(bars.at(-1)?.duration ?? time(0)));
    expect(lengths.join(' ')).toBe('16 3 9/2 3 1 3/4 3/8 3/4 9/8 1/2 1/2');
  });
  it('hold the lowest key of the intonation for a maxima and the end for a longa', () => {
    expect(lineOf(score, 'basse').map(({ end }) => format(end))).toEqual(['8', '12', '16']);
  });
  it('lean a double flat on the fifth above D flat, and a double sharp below its sharp', () => {
    const melodies = score.pieces.slice(-2).map((piece) => melody(piece, highest, true));
    const altered = melodies.map((notes) =>
      notes.flatMap(({ member }, index) => {
        const next = notes[index + 1];
        return Math.abs(member.alteration) === 2 && next ? [[sounding(member), sounding(next.member)].join(' ')] : [];
      }),
    );
    expect(altered).toEqual([['bbb5 ab5'], ['f##5 g#5', 'f##5 g#5', 'c##5 d#5']]);
  });
});
