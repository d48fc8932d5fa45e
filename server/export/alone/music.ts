/** The music of two scores beside one another: what is typed for a choice alone must be what the choice has. */
import { offsetIn } from '../../../grammar/place';
import { format } from '../../../grammar/time';
import type { AppliedMark, Bar, NoteMember, Piece, PlacedProblem, Score, VoiceEvent } from '../../score/score';
import { eventsOf } from '../../score/walk';
import { Losses, NOWHERE, whereBar } from '../losses';

/** A problem for each voice with the bars in which two scores are not the same. */
export function differences(score: Score, alone: Score): readonly PlacedProblem[] {
  const losses = new Losses(score.pieces);
  score.pieces.forEach((piece, index) => {
    const [here, there] = [eventTexts(piece), eventTexts(alone.pieces[index])];
    const apart = [...here, ...there].filter(([text]) => !here.has(text) || !there.has(text));
    for (const [, { voice, bar: found }] of apart) {
      const slots = { voice: score.environment.voices[voice]?.name ?? '', reading: score.choice.name };
      // A bar of either score is told as that of the choice.
      const bar = piece.bars[found.index] ?? found;
      const system = piece.systems[bar.system];
      losses.add('alone-differs', slots, system === undefined ? NOWHERE : whereBar(system, bar));
    }
  });
  return losses.problems();
}

/** Every event that is drawn, with its place in time; empty time draws nothing, and may be cut in pieces otherwise. */
function eventTexts(piece: Piece | undefined): ReadonlyMap<string, { readonly voice: number; readonly bar: Bar }> {
  const found = new Map<string, { voice: number; bar: Bar }>();
  const events = piece === undefined ? [] : [...eventsOf(piece)];
  const lastOf = new Map(events.flatMap(({ event }) => event.chosen.map((place) => [place, event] as const)));
  for (const { event, onset, bar } of events) {
    const ofPlaces = event.chosen.flatMap((place) => (lastOf.get(place) === event ? place.marks : []));
    if (event.kind === 'gap' && event.marks.length === 0 && ofPlaces.length === 0) continue;
    const { voice } = event;
    let text = `${voice} ${format(onset)} ${eventText(event, ofPlaces)}`;
    while (found.has(text)) text += '+';
    found.set(text, { voice, bar });
  }
  return found;
}

/** @param ofPlaces marks of a place that ends here: typed alone they stand at its last note */
function eventText(event: VoiceEvent, ofPlaces: readonly AppliedMark[]): string {
  const { kind, duration, stave, stems, members } = event;
  const own = members.length === 0 ? [...event.marks, ...ofPlaces] : event.marks;
  const notes = members.map((note, i) => noteText(note, i === members.length - 1 ? ofPlaces : []));
  return JSON.stringify([
    ...[kind, format(duration), stave, stems, marksText(own)],
    ...[notes, sungAt(event), drawn(event.figures)?.columns],
  ]);
}

/** What a sub-lane has at an event, unless it says that nothing is drawn. */
const drawn = <Item extends { readonly what: string }>(item: Item | undefined): Item | undefined =>
  item?.what === 'none' ? undefined : item;

/** Syllables with the stanza to which they belong. */
const sungAt = ({ syllables }: VoiceEvent): string[] =>
  syllables.flatMap((one, stanza) => (drawn(one) === undefined ? [] : [`${stanza} ${one?.text}`]));

const noteText = (
  { spelling, octave, midi, stave, tiedFrom, tie, marks }: NoteMember,
  more: readonly AppliedMark[],
) => [spelling.letter, octave, midi, stave, tiedFrom, tie !== undefined, marksText([...marks, ...more])];

/** Names of readings to which a mark was limited are no part of it. */
const marksText = (marks: readonly AppliedMark[]): string[] =>
  marks.map(({ form, shapes }) => [form.name, form.editors, form.doubtful, ...shapes, ...form.parameters].join(' '));

/** Where the bars begin in a text that are too short there and were not in the score of a choice: offsets in the file. */
export function shortByOmission(score: Score, alone: Score): readonly number[] {
  if (score.problems.some(isShort)) return [];
  const places = new Map<string, number>();
  for (const { problem, block, lane } of alone.problems.filter(isShort)) {
    const here = alone.tree.blocks[block];
    const placed = lane === undefined ? undefined : here?.lanes[lane];
    const segment = placed?.tree.segments.findLast(({ pos }) => pos <= problem.pos);
    const key = `${block} ${problem.slots.bar}`;
    if (here === undefined || placed === undefined || segment === undefined || places.has(key)) continue;
    places.set(key, offsetIn(here, placed, segment.pos));
  }
  return [...places.values()];
}

const isShort = ({ problem }: PlacedProblem): boolean => problem.code === 'bar-too-short';
