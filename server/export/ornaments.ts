/**
 * Signs in another form: a score in which they are small notes at their note, or are written out.
 *
 * What a sign means is decided by `signs/`; here its notes become events of a score in values that can be printed. So whoever
 * writes or draws a score writes and draws its signs in any form, and need not know of it.
 */
import type { FindingCode } from '../../grammar/findings/catalogue';
import { putUnder } from '../../grammar/lists';
import { format, type Time } from '../../grammar/time';
import { tableOfReading } from '../readings/choices';
import { type PerformOptions, perform } from '../readings/perform';
import type { Performance, PerformedEvent, PerformedPiece } from '../score/performance';
import type { NoteMember, Piece, PlacedProblem, Score, ScoreSystem, Source, VoiceEvent } from '../score/score';
import { eventsOf, marksOfEvent, type PlacedEvent, placeOfEvent } from '../score/walk';
import { tableInForce } from '../signs/rows';
import { Losses, NOWHERE } from './losses';
import { type BarsChosen, barsChosen, problemsWithin } from './measures';
import { withAccidentals } from './ornaments/accidentals';
import { Numbers } from './ornaments/beams';
import { eventsFor, type WritingOut } from './ornaments/full';
import { divided, HeldVoices, withHeld } from './ornaments/held';
import { regionsOf } from './ornaments/regions';
import { type Replacement, withReplaced } from './ornaments/replaced';
import { withSmallNotes } from './ornaments/small';
import { type Group, type Part, partsOf } from './ornaments/strands';

/** Signs as they stand, as small notes at their note, written out, or as they stand with what they mean above the stave. */
export const ornamentForms = ['sign', 'small', 'full', 'above'] as const;
export type OrnamentForm = (typeof ornamentForms)[number];

export interface OrnamentOptions {
  /** As a rule `sign`. */
  readonly ornaments?: OrnamentForm;
  /** A sign stands beside its notes. As a rule the notes stand in its place. */
  readonly keepSigns?: boolean;
  /** Another table than the reading's or the file's. */
  readonly table?: string;
}

export interface Ornamented {
  readonly score: Score;
  /** What could not be said in that form, and what print says otherwise than it is played. */
  readonly problems: readonly PlacedProblem[];
}

/**
 * The score with its signs in the form wished for; the score itself where it has no table to go by, which is told. What stands
 * above the stave is no part of a score: whoever writes that asks for the score in its form `full` as well.
 */
export function withOrnaments(score: Score, options: OrnamentOptions & BarsChosen): Ornamented {
  const { ornaments = 'sign' } = options;
  if (ornaments === 'sign' || ornaments === 'above') return { score, problems: [] };
  const losses = new Losses(score.pieces, barsChosen(score, options));
  const table = knownTable(score, options, losses);
  if (table === undefined) return { score, problems: losses.problems() };
  const performance = perform(score, { form: 'print', rhythm: 'written', table });
  const voices = new HeldVoices(score.environment);
  const pieces = performance.pieces.map((performed) =>
    new Notator(performed, options, voices, losses).piece(score.choice),
  );
  return {
    score: { ...score, pieces, environment: voices.declared() },
    problems: [...problemsWithin(performance.problems, score, options), ...losses.problems()],
  };
}

/**
 * What is played when signs have the form wished for: as a rule what the reading says; as small notes what the source writes,
 * with notes of no time for the signs. The marks of the source are told in any form.
 */
export function performedIn(score: Score, options: OrnamentOptions & Pick<PerformOptions, 'pace'>): Performance {
  const { ornaments, table, pace } = options;
  const inTempo = pace === undefined ? {} : { pace };
  if (ornaments === undefined && table === undefined) return perform(score, inTempo);
  if (ornaments === 'small') {
    const { score: small, problems } = withOrnaments(score, { ...options, keepSigns: true });
    return { ...perform(small, { ...inTempo, ornaments: 'sign' }), problems };
  }
  const losses = new Losses();
  const known = ornaments === 'sign' ? undefined : knownTable(score, options, losses);
  const performance = perform(score, {
    ...inTempo,
    ...(known === undefined ? { ornaments: 'sign' } : { table: known }),
  });
  return { ...performance, problems: [...performance.problems, ...losses.problems()] };
}

/** The table to go by; undefined where there is none, which is told if there is anything to go by it. */
function knownTable(score: Score, { table = tableOf(score) }: OrnamentOptions, losses: Losses): string | undefined {
  if (table === undefined) {
    if (bearsSigns(score)) losses.add('ornaments-no-table', {}, NOWHERE);
  } else if (tableInForce(table, score.environment) !== undefined) return table;
  else losses.add('ornaments-unknown-table', { table }, NOWHERE);
  return undefined;
}

const bearsSigns = ({ pieces }: Score): boolean =>
  pieces.some((piece) =>
    [...eventsOf(piece)].some(
      ({ event }) => event.small !== undefined || marksOfEvent(event).some(({ form }) => form.type === 'sign'),
    ),
  );

/** The table of the reading, or else that of the file, also for the text as written: its signs are asked for. */
export const tableOf = ({ environment, choice }: Score): string | undefined =>
  tableOfReading(environment, choice.name) ?? environment.signs;

const playedIn = (groups: readonly Group[]): PerformedEvent[] => groups.flatMap(({ played }) => played);

/** Writes the signs of one piece as notes. */
class Notator {
  private readonly replacements = new Map<ScoreSystem, Map<number, Map<number, readonly Replacement[]>>>();
  private readonly numbers = new Map<ScoreSystem, Numbers>();
  private readonly made = new Set<NoteMember>();
  /** By block and voice. */
  private readonly held = new Map<number, Map<number, VoiceEvent[]>>();

  constructor(
    private readonly performed: PerformedPiece,
    private readonly options: OrnamentOptions,
    private readonly voices: HeldVoices,
    private readonly losses: Losses,
  ) {}

  piece({ accidentals }: Score['choice']): Piece {
    for (const part of partsOf(this.performed)) {
      if (this.options.ornaments === 'small') this.small(part);
      else this.full(part);
    }
    const replaced = withReplaced(this.performed.piece, this.replacements);
    return withAccidentals(withHeld(replaced, this.held), this.made, accidentals);
  }

  // ── small notes ──

  private small({ written, groupsAt }: Part): void {
    for (const placed of written) {
      const groups = (groupsAt.get(placeOfEvent(placed)) ?? []).filter(({ changed }) => changed);
      if (groups.length === 0 || placed.bar.broken) continue;
      const found = withSmallNotes(placed, groups, this.writing(placed));
      if (found === undefined) continue;
      this.replace(placed, found.replacements);
      this.tell('ornament-strokes', placed, found.leftOut);
      this.tell('ornament-printed', placed, playedIn(groups));
    }
  }

  // ── written out ──

  private full(part: Part): void {
    const { regions, failed } = regionsOf(this.performed.piece, part);
    const stays = new Set(failed.map(({ onset }) => format(onset)));
    const written = new Set<Group>();
    for (const region of regions) {
      const { placed, groups, slices } = region;
      const goesOnAt = (moment: Time): boolean => !stays.has(format(moment));
      const parts = divided(region);
      this.replace(placed, eventsFor(parts?.region ?? region, { ...this.writing(placed), goesOnAt }));
      if (parts !== undefined) this.hold(placed, parts.held);
      for (const { strands } of slices) for (const { group } of strands) written.add(group);
      this.tell('ornament-printed', placed, playedIn(groups));
    }
    for (const placed of failed)
      this.tell('ornament-plain', placed, playedIn(part.groupsAt.get(placeOfEvent(placed)) ?? []));
    // Small notes that are written out stand in the time of their main notes.
    for (const { from } of written)
      for (const { placed } of from) if (placed.event.small !== undefined) this.replace(placed, []);
  }

  private hold({ system, voice }: PlacedEvent, event: VoiceEvent): void {
    const voices = this.held.get(system.block) ?? new Map<number, VoiceEvent[]>();
    const index = this.voices.of(voice.voice);
    putUnder(voices, index, event);
    this.held.set(system.block, voices);
  }

  // ── both ──

  private writing({ system }: PlacedEvent): Pick<WritingOut, 'numbers' | 'keepSigns' | 'made'> {
    const numbers = this.numbers.get(system) ?? new Numbers(system.score.voices.flatMap(({ events }) => events));
    this.numbers.set(system, numbers);
    return { numbers, keepSigns: this.options.keepSigns === true, made: this.made };
  }

  private replace({ system, voice, index }: PlacedEvent, by: readonly Replacement[]): void {
    const voices = this.replacements.get(system) ?? new Map<number, Map<number, readonly Replacement[]>>();
    const events = voices.get(voice.voice) ?? new Map<number, readonly Replacement[]>();
    this.replacements.set(system, voices.set(voice.voice, events.set(index, by)));
  }

  /** Once for each sign of a table that is played for, with all its bars. */
  private tell(code: FindingCode, { system, bar, event }: PlacedEvent, played: readonly PerformedEvent[]): void {
    const realised = played.flatMap((one) => one.realised ?? []);
    const kinds = new Map(realised.map((one) => [`${one.sign} ${one.row}`, one]));
    for (const { sign, row, table } of kinds.values()) {
      this.losses.add(
        code,
        { what: row === '' ? `the small notes, by ${table}` : `the sign ${sign} (${row}, ${table})` },
        { source: sourceOf(event, sign), system, bar },
      );
    }
  }
}

/** Where a sign stands at an event that bears it; else the event. */
function sourceOf(event: VoiceEvent, sign: string): Source {
  const shapes = sign.split('+');
  const borne = marksOfEvent(event).find((mark) => mark.shapes.some((shape) => shapes.includes(shape)));
  return (borne ?? event).source;
}
