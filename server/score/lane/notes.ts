/** The notes of a lane: an octave typed once holds on, and a chord may reach into other staves. */
import type { Fix } from '../../../grammar/findings/finding';
import { replacing } from '../../../grammar/findings/fixes';
import type { Member, Span, ValueItem } from '../../../grammar/tree';
import { HIGHEST_OCTAVE } from '../../../grammar/vocabulary/pitches';
import { intervalOf } from '../amounts';
import { holdsIn } from '../choice';
import { LaneNote } from '../event';
import { octaveNearest, stepOf } from '../heights';
import { valueBehind } from '../valueBehind';
import type { LaneBars } from './laneBars';
import { moved, type SuffixReader } from './suffixes';
import type { LaneTask } from './task';

const SEVENTH = 6;

/** Where a note stands in its chord. */
type InChord = 'alone' | 'first' | 'further';

/** Reads the notes of one lane. */
export class NoteReader {
  /** In force until another is typed. */
  octave: number | undefined;
  private octaveMissed = false;
  /** Of the note before. */
  private lastStep: number | undefined;

  constructor(
    private readonly task: LaneTask,
    private readonly bars: LaneBars,
    private readonly suffixes: SuffixReader,
    /** A value that stands before the note and nothing but it. */
    private readonly typed: () => ValueItem | undefined,
  ) {}

  /**
   * The notes of an event.
   * @param at where the event stands
   * @param stave on which its notes are unless they say otherwise
   */
  read(members: readonly Member[], at: number, stave: number): LaneNote[] {
    const first = members[0];
    if (first !== undefined && members.length === 1 && first.stave === undefined) {
      return [this.note(first, at, stave, 'alone')];
    }
    const notes: LaneNote[] = [];
    let on = stave;
    for (const member of members) {
      if (member.stave !== undefined) on = this.staveTowards(member.stave, on, moved(member, at)) ?? on;
      notes.push(this.note(member, at, on, member === first ? 'first' : 'further'));
    }
    return notes.slice();
  }

  private note(member: Member, at: number, stave: number, inChord: InChord): LaneNote {
    const { spelling, len, suffixes, tie } = member;
    const octave = this.octaveOf(member, at, inChord);
    const step = stepOf(spelling.letter, octave);
    if (inChord !== 'further') this.counselLeap(member, at, step);
    this.lastStep = step;
    const { marks, annotations } = this.suffixes.applied(suffixes, at);
    const held = tie !== undefined && holdsIn(tie.readings, this.task.choice) ? tie : undefined;
    return new LaneNote(this.bars.lane, at + member.pos, len, spelling, octave, stave, held, marks, annotations);
  }

  private octaveOf(member: Member, at: number, inChord: InChord): number {
    const { octave } = member.spelling;
    if (octave !== undefined) this.octave = octave;
    if (octave !== undefined && octave > HIGHEST_OCTAVE)
      this.tellNoKey(member, at, octave === 8 && inChord === 'alone');
    if (this.octave === undefined) {
      this.bars.current.broken = true;
      if (!this.octaveMissed && !this.bars.junk) this.tellNoOctave(member, at);
      this.octaveMissed = true;
    }
    return this.octave ?? 4;
  }

  /** The octave that is nearest to the note before is probably meant. */
  private tellNoOctave(member: Member, at: number): void {
    const place = moved(member, at);
    const { text, letter, doubtful } = member.spelling;
    const nearest = this.lastStep === undefined ? undefined : octaveNearest(letter, this.lastStep);
    const end = { pos: place.pos + text.length - (doubtful ? 1 : 0), len: 0 };
    const fixes = nearest === undefined ? [] : [replacing(end, `${nearest}`, `put the octave ${nearest} after it`)];
    this.bars.report('octave-missing', place, { note: text }, fixes);
  }

  /** @param isValue an 8 behind a note was as a rule meant as a value, of this note or of the next; a chord may go on after it */
  private tellNoKey(member: Member, at: number, isValue: boolean): void {
    const place = moved(member, at);
    const fixes = isValue ? valueApart(member, place.pos, this.typed()) : [];
    this.bars.report('octave-without-keys', place, { note: member.spelling.text }, fixes);
  }

  /** A seventh or more with no digit typed is often a forgotten octave. */
  private counselLeap(member: Member, at: number, step: number): void {
    if (member.spelling.octave !== undefined || this.octave === undefined || this.lastStep === undefined) return;
    if (Math.abs(step - this.lastStep) < SEVENTH) return;
    this.bars.report('leap', moved(member, at), {
      note: member.spelling.text,
      interval: intervalOf(step - this.lastStep),
    });
  }

  /** The stave above or below, or the lane's own; undefined, and a finding, where there is none. */
  staveTowards(way: 'up' | 'down' | 'home', from: number, at: Span): number | undefined {
    if (way === 'home') return this.task.stave;
    const stave = from + (way === 'up' ? -1 : 1);
    if (this.task.environment.staves[stave] !== undefined) return stave;
    this.bars.report('no-stave-there', at, { way: way === 'up' ? 'above' : 'below' });
    return undefined;
  }
}

/** `e8` as `8 e` or, where nothing is glued to it, as `e 8`. */
function valueApart({ spelling, suffixes, tie }: Member, pos: number, typed: ValueItem | undefined): Fix[] {
  const { own, next } = valueBehind(spelling, 8, pos, typed);
  const isBare = spelling.text.endsWith('8') && suffixes.length === 0 && tie === undefined;
  return isBare ? [own, next] : [own];
}
