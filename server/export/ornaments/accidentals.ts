/** Which notes that are played for signs need an accidental, and which written notes after them one that cancels it. */
import { add, compare, type Time } from '../../../grammar/time';
import type { AccidentalSign, Spelling } from '../../../grammar/tree';
import type { AccidentalPractice } from '../../score/choice';
import { inForce } from '../../score/clock';
import type { KeySign, NoteMember, Piece, VoiceEvent } from '../../score/score';
import { changesOf } from '../../score/walk';
import { alterationIn } from '../../signs/passage';
import { eventLike, noteLike } from './events';

/** An event with its place in the list of its voice. */
interface Standing {
  readonly event: VoiceEvent;
  readonly events: VoiceEvent[];
  readonly index: number;
  readonly onset: Time;
}

const SIGNS: Readonly<Record<string, AccidentalSign>> = { '-2': 'bb', '-1': 'b', '0': 'n', '1': '#', '2': '##' };

/** The piece with the accidentals of the notes that are `made`: within a bar one holds for its line or space on its stave. */
export function withAccidentals(piece: Piece, made: ReadonlySet<NoteMember>, practice: AccidentalPractice): Piece {
  if (made.size === 0) return piece;
  const systems = piece.systems.map((system) => ({
    ...system,
    score: { ...system.score, voices: system.score.voices.map((voice) => ({ ...voice, events: [...voice.events] })) },
  }));
  const bars = new Map<number, Standing[]>();
  for (const { firstBar, onset, score } of systems) {
    for (const { events } of score.voices) {
      for (const [index, event] of events.entries()) {
        const bar = bars.get(firstBar + event.bar) ?? [];
        bars.set(firstBar + event.bar, bar);
        bar.push({ event, events, index, onset: add(onset, event.onset) });
      }
    }
  }
  const keys = keysOf(piece);
  for (const bar of bars.values()) {
    if (!bar.some(({ event }) => event.members.some((note) => made.has(note)))) continue;
    const reader = new BarReader(keys, made, practice);
    for (const standing of bar.sort((a, b) => compare(a.onset, b.onset))) reader.take(standing);
  }
  return { ...piece, systems };
}

/** The signatures of each stave in the order of time. */
function keysOf(piece: Piece): (stave: number, onset: Time) => readonly KeySign[] {
  const all = [...changesOf(piece)].flatMap(({ change, onset }) =>
    change.key === undefined ? [] : [{ onset, what: change.key, stave: change.stave }],
  );
  return (stave, onset) =>
    inForce(
      all.filter((one) => one.stave === undefined || one.stave === stave),
      onset,
    ) ?? [];
}

/** What a line or space of a stave bears: whether an accidental of a written note holds is a matter of the practice. */
interface State {
  readonly alteration: number;
  readonly holds: boolean;
  readonly byMade: boolean;
}

class BarReader {
  private readonly states = new Map<string, State>();

  constructor(
    private readonly keyAt: (stave: number, onset: Time) => readonly KeySign[],
    private readonly made: ReadonlySet<NoteMember>,
    private readonly practice: AccidentalPractice,
  ) {}

  take({ event, events, index, onset }: Standing): void {
    const members = event.members.map((note) => this.spelled(note, onset));
    if (members.some((note, i) => note !== event.members[i])) events[index] = eventLike(event, { members });
  }

  private spelled(note: NoteMember, onset: Time): NoteMember {
    const { spelling, octave, alteration, stave } = note;
    const place = `${stave} ${spelling.letter}${octave}`;
    const inKey = alterationIn(this.keyAt(stave, onset), spelling.letter, octave);
    const state = this.states.get(place) ?? { alteration: inKey, holds: true, byMade: false };
    const isMade = this.made.has(note);
    const isDrawn = [spelling.accidental, spelling.editors, spelling.cautionary].some((sign) => sign !== undefined);
    const sign = isMade ? this.needed(note, state, inKey) : this.cancelling(note, state, isDrawn);
    if (isMade || isDrawn || sign !== undefined) {
      this.states.set(place, {
        alteration,
        holds: note.realised !== undefined || this.practice === 'bar',
        byMade: isMade,
      });
    }
    if (sign === undefined) return note;
    return noteLike(note, { spelling: { ...spelling, ...(isMade ? { accidental: sign } : { editors: sign }) } });
  }

  /** A note of a sign has its accidental where nothing says it yet. */
  private needed({ alteration }: NoteMember, state: State, inKey: number): Spelling['accidental'] {
    const said = state.alteration === alteration && (state.holds || inKey === alteration);
    return said ? undefined : SIGNS[alteration];
  }

  /** A written note without one has the editor's where that of a sign would seem to hold for it. */
  private cancelling({ alteration, tiedFrom }: NoteMember, state: State, isDrawn: boolean): Spelling['editors'] {
    const misled = state.byMade && state.alteration !== alteration && !isDrawn && !tiedFrom;
    return misled ? SIGNS[alteration] : undefined;
  }
}
