/** The main lanes of a system with what a choice has there typed in them. */
import type { Barline, Block } from '../../../grammar/tree';
import { edited, type TextChange } from '../../document/edits';
import { type Choice, preferredWitness } from '../../score/choice';
import { isSpecial } from '../../score/score';
import { resolvedSuffixes, type TakenBar } from './resolve';
import { drop, endOfBarline, endOfGlued, inFile, type LaneChange, onOneLine, put } from './stretches';
import type { BarFate, ResolvedLane, ResolvedVoice, StandingBar } from './voices';

/** A stretch of a lane's text with changes made in it, on one line. */
function stretchWith(text: string, from: number, to: number, changes: readonly LaneChange[]): string {
  const within = changes.map(({ pos, len, text: by }) => ({ offset: pos - from, length: len, text: by }));
  return onOneLine(edited(text.slice(from, to), within));
}

/** A barline with what is glued to it in the choice; the one that begins the next line left out. */
function barlineText(text: string, bar: Barline, choice: Choice): string {
  return stretchWith(text, bar.pos, endOfGlued(bar), resolvedSuffixes(bar.suffixes, choice));
}

export interface LaneTask {
  readonly choice: Choice;
  readonly fates: readonly BarFate[];
  /** What is typed in a bar besides what is. */
  typedIn(bar: TakenBar): readonly LaneChange[];
  /** Changes for all lanes that stand in the main lane's bar and hold in the witness's, too. */
  sharedIn(standing: StandingBar, index: number): readonly LaneChange[];
}

/** Changes of the main lane's text that put the bars of the choice in place of its own. */
export function mainLaneChanges(voice: ResolvedVoice, bars: readonly StandingBar[], task: LaneTask): LaneChange[] {
  const texts = new Map([voice.main, ...voice.witnesses].map(({ index, placed }) => [index, placed.tree.text]));
  return bars.flatMap((standing, index) => {
    const fate = task.fates[index] ?? { isGone: false, isJoined: false };
    const content = fate.isGone ? leftIn(standing, texts) : contentOf(bars, index, texts, task);
    return [...content, ...closingOf(standing, fate, texts, task.choice)];
  });
}

type Texts = ReadonlyMap<number, string>;

/** Of a bar that is gone: what changes in it changes in the next one; an ending goes with its bar. */
function leftIn({ own, taken }: StandingBar, texts: Texts): LaneChange[] {
  const text = texts.get(taken.lane) ?? '';
  const left = taken.steps.flatMap((step) =>
    step.kind === 'change' && step.item.change.word !== 'ending'
      ? [text.slice(step.item.pos, step.item.pos + step.item.len)]
      : [],
  );
  return [{ ...drop(own.from, own.to), text: left.map((one) => ` ${one}`).join('') }];
}

function contentOf(bars: readonly StandingBar[], index: number, texts: Texts, task: LaneTask): LaneChange[] {
  const standing = bars[index] as StandingBar;
  const { own, taken } = standing;
  const [before, after] = [bars[index - 1], bars[index + 1]];
  if (own === taken) {
    // A span that goes on over the barline is parted where the next bar, or the one before, is another's.
    const isReopened = before !== undefined && before.own !== before.taken;
    const isParted = after !== undefined && after.own !== after.taken;
    return [
      ...(isReopened ? own.within.map((head) => put(own.from, ` ${head}`)) : []),
      ...own.changes,
      ...task.typedIn(own),
      ...(isParted && after.own.within.length > 0 ? [put(own.to, `${'}'.repeat(after.own.within.length)} `)] : []),
    ];
  }
  const changes = [...taken.changes, ...task.typedIn(taken), ...task.sharedIn(standing, index)];
  const content = stretchWith(texts.get(taken.lane) ?? '', taken.from, taken.to, changes);
  const open = after?.taken.lane === taken.lane ? after.taken.within.length : 0;
  const words = [...taken.within, content].filter((word) => word !== '');
  return [{ ...drop(own.from, own.to), text: ` ${words.join(' ')}${'}'.repeat(open)} ` }];
}

/** What becomes of the barline that ends a bar. */
function closingOf({ own, taken, ending }: StandingBar, fate: BarFate, texts: Texts, choice: Choice): LaneChange[] {
  const { closing } = own;
  const meant =
    ending.closing === undefined ? undefined : barlineText(texts.get(ending.lane) ?? '', ending.closing, choice);
  const wanted = fate.isGone || fate.isJoined ? undefined : taken.closingOmitted ? (meant ?? '|') : meant;
  if (closing === undefined) return wanted === undefined ? [] : [put(own.to, ` ${wanted} `)];
  if (wanted === undefined) return [drop(closing.pos, endOfBarline(closing))];
  if (ending === own) return resolvedSuffixes(closing.suffixes, choice);
  return [{ ...drop(closing.pos, endOfGlued(closing)), text: wanted }];
}

const isBare = ({ placed: { open, tree } }: ResolvedLane): boolean =>
  !isSpecial(open) && !open.editors && open.suffixes.length === 0 && tree.opening.again === undefined;

/** The barline before the first bar: that of the preferred witness whose lane has one of its own. In file offsets. */
export function openingChanges(
  { main, witnesses }: ResolvedVoice,
  block: Block,
  text: string,
  choice: Choice,
): TextChange[] {
  const rival = preferredWitness(
    choice,
    witnesses.filter((one) => !isBare(one)),
  );
  const { suffixes, again } = main.placed.tree.opening;
  const own = inFile(text, block, main.placed, resolvedSuffixes([...suffixes, ...(again?.suffixes ?? [])], choice));
  if (rival === undefined) return own;
  const { open, tree } = rival.placed;
  const glued = tree.opening.suffixes.at(-1);
  const sign = `${open.shape}${open.editors ? '[]' : ''}`;
  const typed =
    glued === undefined
      ? ''
      : stretchWith(tree.text, 0, glued.pos + glued.len, resolvedSuffixes(tree.opening.suffixes, choice));
  const from = block.offset + main.placed.open.pos;
  const last = suffixes.at(-1);
  const to = block.offset + (main.placed.starts[0] ?? 0) + (last === undefined ? 0 : last.pos + last.len);
  return [{ offset: from, length: to - from, text: `${sign}${typed}` }];
}
