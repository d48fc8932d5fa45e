/** The order in which a piece is played: repeats that the source draws, and an order of sections stated beside it. */
import { type Bar, isSpecial, type Piece, type Section } from '../../score/score';
import { BARLINES } from './tables';

/** What makes a program play the order; bars are indices in `Piece.bars`. */
export interface PlayedOrder {
  /** How often the strain is played that a backward repeat at the end of this bar repeats. */
  readonly times: ReadonlyMap<number, number>;
  readonly jump: Jump | undefined;
}

/** After the last bar a section is played once more, without repeats. */
export interface Jump {
  readonly to: Section;
  /** The last bar is reached so many times; the jump is made the last time. */
  readonly reached: number;
}

/** The order stated for the piece; one of a reading for the whole file may speak of another piece's sections. */
export const orderOf = ({ sections, order }: Piece): readonly string[] | undefined =>
  sections.some(({ name }) => order?.includes(name)) ? order : undefined;

/** How repeats and one jump play the stated order; undefined where none is stated or they cannot. */
export function playedOrder(piece: Piece): PlayedOrder | undefined {
  const { bars, sections } = piece;
  const order = orderOf(piece);
  if (order === undefined) return undefined;
  const strains = sections.filter(({ within }) => within === undefined);
  if (strains[0]?.firstBar !== 0 || strains.at(-1)?.endBar !== bars.length) return undefined;
  const times = new Map<number, number>();
  let at = 0;
  let reached = 1;
  for (const strain of strains) {
    const begun = at;
    while (order[at] === strain.name) at += 1;
    reached = at - begun;
    const drawn = playingsOf(strain, bars);
    if (drawn === undefined || !agrees(drawn, reached)) return undefined;
    if (drawn.repeated && drawn.endings === undefined && reached !== 2) times.set(strain.endBar - 1, reached);
  }
  const [next, ...others] = order.slice(at);
  if (next === undefined) return { times, jump: undefined };
  const to = sections.find(({ name }) => name === next);
  return to === undefined || others.length > 0 || hasRepeatWithin(to, bars)
    ? undefined
    : { times, jump: { to, reached } };
}

/** What is drawn of a strain's repeat. */
interface Drawn {
  readonly repeated: boolean;
  /** The number of its endings, which says how often it is played. */
  readonly endings: number | undefined;
}

const agrees = ({ repeated, endings }: Drawn, playings: number): boolean =>
  endings === undefined ? (repeated ? playings > 0 : playings === 1) : playings === endings;

const isBackward = (bar: Bar | undefined): boolean =>
  bar?.closing !== undefined && BARLINES[bar.closing.shape].backward;
const isForward = (bar: Bar | undefined): boolean => bar?.closing !== undefined && BARLINES[bar.closing.shape].forward;

const barsOf = ({ firstBar, endBar }: Section, bars: readonly Bar[]): readonly Bar[] => bars.slice(firstBar, endBar);

/** Undefined where the strain holds repeats other than that of its whole. */
function playingsOf(strain: Section, bars: readonly Bar[]): Drawn | undefined {
  const own = barsOf(strain, bars);
  const endings = own.flatMap(({ ending }) => (ending === undefined ? [] : [ending]));
  const backwards = own.filter(isBackward).length;
  if (own.slice(0, -1).some(isForward)) return undefined;
  if (endings.length > 0) {
    const count = Math.max(...endings);
    return backwards === count - 1 && !isBackward(own.at(-1)) ? { repeated: true, endings: count } : undefined;
  }
  const repeated = isBackward(own.at(-1));
  return backwards === (repeated ? 1 : 0) ? { repeated, endings: undefined } : undefined;
}

const hasRepeatWithin = (section: Section, bars: readonly Bar[]): boolean =>
  barsOf(section, bars)
    .slice(0, -1)
    .some((bar) => isBackward(bar) || isForward(bar)) ||
  barsOf(section, bars).some(({ ending }) => ending !== undefined);

/**
 * The bars at which a repeat begins that no sign shows: a strain that is repeated, after a special barline or at the
 * beginning of its piece.
 */
export function hiddenForwards({ bars }: Piece): ReadonlySet<number> {
  const hidden = new Set<number>();
  let start = 0;
  let shown = false;
  for (const [i, bar] of bars.entries()) {
    if (opensForward(bar)) {
      start = i;
      shown = true;
    }
    if (isBackward(bar) && !shown && bars[start]?.ending === undefined) hidden.add(start);
    if (!isSpecial(bar.closing)) continue;
    start = i + 1;
    shown = isForward(bar);
  }
  return hidden;
}

const opensForward = ({ opening }: Bar): boolean => opening !== undefined && BARLINES[opening.shape].forward;
