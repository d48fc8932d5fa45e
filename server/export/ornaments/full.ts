/** Signs and small notes written out: the events that stand in the time of a written one. */
import { add, compare, divide, equal, multiply, subtract, type Time, time } from '../../../grammar/time';
import type { WrittenEvent } from '../../score/performance';
import type { AppliedMark, NoteMember, VoiceEvent } from '../../score/score';
import { placeOfEvent } from '../../score/walk';
import { beamed, type Numbers } from './beams';
import { addressOfPart, BARE, eventLike, noteLike, noteOn, PLAIN_TIE, valueForm } from './events';
import type { PrintedValue } from './printed';
import type { Region, Slice } from './regions';
import type { Head, Replacement } from './replaced';
import { byHeight, isWrittenOut, type Strand, soundsAs, writtenAt } from './strands';

export interface WritingOut {
  readonly numbers: Numbers;
  readonly keepSigns: boolean;
  /** The notes that are struck and have no accidental yet. */
  readonly made: Set<NoteMember>;
  /** Whether a note that sounds on at a moment goes on in what is written there. */
  readonly goesOnAt: (moment: Time) => boolean;
}

/** The events that stand for a written one, in the order of time. */
export function eventsFor(region: Region, out: WritingOut): readonly Replacement[] {
  const atoms = atomsOf(region);
  const writer = new Writer(region, out);
  const made = atoms.map((atom, i) => writer.eventAt(atom, i + 1, atoms.length));
  const timed = made.map(({ event }, i) => ({
    event,
    bar: atoms[i]?.slice.bar ?? region.placed.bar,
    onset: atoms[i]?.onset ?? region.placed.onset,
  }));
  const events = beamed(timed, out.numbers);
  return made.map(({ event, heads }, i) => ({ event: events[i] ?? event, heads }));
}

/** One drawn value. */
interface Atom {
  readonly slice: Slice;
  readonly value: PrintedValue;
  readonly onset: Time;
  /** Of the values that tied together stand for its slice. */
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

const atomsOf = ({ slices }: Region): readonly Atom[] =>
  slices.flatMap((slice) => {
    let onset = slice.at;
    return slice.values.map((value, i) => {
      const atom = { slice, value, onset, isFirst: i === 0, isLast: i === slice.values.length - 1 };
      onset = add(onset, value.length);
      return atom;
    });
  });

/** Writes the events of one written event one after another, each of its marks once. */
class Writer {
  /** Written notes whose signs, and those whose pitch, stand somewhere already. */
  private readonly signed = new Set<NoteMember>();
  private readonly spelled = new Set<NoteMember>();
  /** Shapes of signs that are written out here. */
  private readonly signs: ReadonlySet<string>;

  constructor(
    private readonly region: Region,
    private readonly out: WritingOut,
  ) {
    this.signs = new Set(out.keepSigns ? [] : region.groups.flatMap(({ signs }) => [...signs]));
  }

  /** @param number from 1, of `among` */
  eventAt(atom: Atom, number: number, among: number): Replacement {
    const { event: written, system } = this.region.placed;
    const notes = strandsIn(atom).map((strand) => this.noteOf(strand, atom));
    const { tuplet } = atom.value;
    const event = eventLike(written, {
      ...BARE,
      ...this.ofWhole(atom, number === 1, number === among),
      kind: notes.length > 0 ? 'note' : written.kind === 'note' ? 'rest' : written.kind,
      bar: atom.slice.bar.index - system.firstBar,
      onset: subtract(atom.onset, system.onset),
      duration: atom.value.length,
      value: valueForm(atom.value),
      wholeBar: false,
      members: notes.map(({ note }) => note),
      stave: notes[0]?.note.stave ?? written.stave,
      tuplets: tuplet === undefined ? written.tuplets : [...written.tuplets, tuplet],
      address: addressOfPart(written, number),
    });
    return { event, heads: notes.map(({ head }) => head) };
  }

  /** What stands at the whole of the written event, and of small notes that begin here. */
  private ofWhole(atom: Atom, isFirst: boolean, isLast: boolean): Partial<VoiceEvent> {
    const { event } = this.region.placed;
    const marks = event.marks.filter((mark) => !isWrittenOut(mark, this.signs));
    const held = event.members.flatMap((note) => note.marks.filter(isForEnd));
    const small = smallIn(atom);
    const own = isFirst ? [event, ...small] : small;
    return {
      marks: [
        ...marks.filter((mark) => (isForEnd(mark) ? isLast : isFirst)),
        ...(isLast ? held : []),
        ...small.flatMap((one) => one.marks.filter((mark) => !isWrittenOut(mark, this.signs))),
      ],
      annotations: own.flatMap(({ annotations }) => annotations),
      words: own.flatMap(({ words }) => words),
      figures: this.figuresAt(atom),
      ...(isLast ? { custos: event.custos } : {}),
      ...(isFirst ? { syllables: event.syllables } : {}),
    };
  }

  /** Figures that follow one another share the time of the written event. */
  private figuresAt({ onset, value }: Atom): VoiceEvent['figures'] {
    const { event, onset: begins } = this.region.placed;
    if (event.figures === undefined) return undefined;
    const { columns } = event.figures;
    const each = divide(event.duration, time(Math.max(1, columns.length)));
    const ends = add(onset, value.length);
    const here = columns.filter((_, i) => {
      const at = add(begins, multiply(each, time(i)));
      return compare(at, onset) >= 0 && compare(at, ends) < 0;
    });
    const isFirst = equal(onset, begins);
    return here.length > 0 || (isFirst && columns.length === 0) ? { ...event.figures, columns: here } : undefined;
  }

  private noteOf(strand: Strand, atom: Atom): { readonly note: NoteMember; readonly head: Head } {
    const { group } = strand;
    const written = writtenAt(group, this.region.placed) ?? group.from[0];
    const { member, placed } = written;
    if (member === undefined) throw new RangeError('what sounds is a note');
    const tiedFrom = !isStruck(strand, atom) || isEntered(strand, written);
    const tie = this.goesOn(strand, atom)
      ? (this.tieWithin(written, atom) ?? PLAIN_TIE)
      : this.looseTie(strand, written);
    const isOwn = placed.event.small !== undefined || placeOfEvent(placed) === placeOfEvent(this.region.placed);
    const spelledHere = soundsAs(strand.pitch, member) && isOwn && !this.spelled.has(member);
    const marks = isOwn ? this.marksOf(member, spelledHere) : NOTHING;
    const plain = noteOn(strand.pitch, member, strand.realised);
    const spelling = spelledHere && (tiedFrom || !member.tiedFrom) ? member.spelling : plain.spelling;
    const note = noteLike(plain, { spelling, tiedFrom, tie, ...marks });
    if (spelling === plain.spelling && !tiedFrom) this.out.made.add(note);
    const head = {
      event: placed.system === this.region.placed.system ? placed.index : -1,
      member: placed.event.members.indexOf(member),
    };
    return { note, head };
  }

  /** Signs stand at the first note that is played for a written one, whatever else does where that itself sounds first. */
  private marksOf(member: NoteMember, spelledHere: boolean): Pick<NoteMember, 'marks' | 'annotations'> {
    const isFirst = !this.signed.has(member);
    this.signed.add(member);
    if (spelledHere) this.spelled.add(member);
    const marks = member.marks
      .filter((mark) => !isWrittenOut(mark, this.signs) && !isForEnd(mark) && !runsThrough(mark))
      .filter(({ form }) => (form.type === 'sign' ? isFirst : spelledHere));
    return { marks, annotations: isFirst ? member.annotations : [] };
  }

  private goesOn({ end }: Strand, { slice, isLast }: Atom): boolean {
    return !isLast || (compare(end, slice.ends) > 0 && this.out.goesOnAt(slice.ends));
  }

  /** The tie as it is typed, where the note goes on in the next written event. */
  private tieWithin({ member, placed }: WrittenEvent, { slice, isLast }: Atom): NoteMember['tie'] {
    return isLast && equal(slice.ends, add(placed.onset, placed.event.duration)) ? member?.tie : undefined;
  }

  /** A tie that leads to no note right after it, as before a first ending. */
  private looseTie({ pitch, end, group }: Strand, { member, placed }: WrittenEvent): NoteMember['tie'] {
    const isEnd = placed === group.from.at(-1)?.placed && equal(end, add(placed.onset, placed.event.duration));
    return isEnd && member !== undefined && soundsAs(pitch, member) ? member.tie : undefined;
  }
}

const isStruck = ({ onset }: Strand, { slice, isFirst }: Atom): boolean => isFirst && equal(onset, slice.begins);

/** Whether a tie leads into the very beginning from no note right before, as into a second ending. */
const isEntered = ({ onset, group }: Strand, { placed, member }: WrittenEvent): boolean =>
  placed === group.from[0].placed && member?.tiedFrom === true && equal(onset, placed.onset);

const NOTHING: Pick<NoteMember, 'marks' | 'annotations'> = { marks: [], annotations: [] };

/** The end of a note is where it is held at will. */
const isForEnd = ({ form }: AppliedMark): boolean => form.name === 'fermata';

/** Written out, a note that runs through a barline is tied over it. */
const runsThrough = ({ form }: AppliedMark): boolean => form.name === 'through';

/** From the lowest; of two on one key the one that is struck, else the first. */
function strandsIn({ slice: { strands, begins } }: Atom): readonly Strand[] {
  const byKey = new Map<number, Strand>();
  for (const strand of strands) {
    const other = byKey.get(strand.pitch.midi);
    if (other === undefined || equal(strand.onset, begins)) byKey.set(strand.pitch.midi, strand);
  }
  return [...byKey.values()].sort((a, b) => byHeight(a.pitch, b.pitch));
}

/** The small notes that begin with a value. */
const smallIn = ({ slice, isFirst }: Atom): readonly VoiceEvent[] =>
  isFirst
    ? slice.strands
        .filter(({ onset, group }) => equal(onset, slice.begins) && group.from[0].placed.event.small !== undefined)
        .filter(({ onset, group }) => equal(onset, group.played[0]?.onset ?? onset))
        .map(({ group }) => group.from[0].placed.event)
    : [];
