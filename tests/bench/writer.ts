/**
 * Someone who writes a score down, lane after lane, with all that the editor does for whoever types: the keys that are pressed.
 *
 * It is the language server that is asked at each key at which the client asks it; what it inserts is not typed. Where it
 * inserts what is not wanted, the keys that take it away count.
 */

import { lexerOf } from '../../grammar/lanes/tokens';
import { offsetIn } from '../../grammar/place';
import type { Block, LaneTree, PlacedLane } from '../../grammar/tree';
import { edited } from '../../server/document/edits';
import { completion, TRIGGERS } from '../../server/features/completion';
import { nextSystem } from '../../server/features/nextSystem';
import { offsetOfPosition, positionOfOffset } from '../../server/features/place';
import { afterTyping } from '../../server/features/typed';
import { noFiles } from '../../server/workspace/host';
import type { Project } from '../../server/workspace/project';
import { Workspace } from '../../server/workspace/workspace';

/** Keys that are no signs: one more than the signs themselves, none with a modifier. */
const TAKE = '\t';
const ONWARD = '\t';
const DELETE = '\b';
const END = '\n';

/** A lane with one space between what must be parted; comments are left out, and white space that aligns. */
export function plainText({ kind, text }: LaneTree): string {
  const { tokens } = lexerOf(kind).tokenize(text);
  let plain = '';
  let end = 0;
  for (const { image, startOffset } of tokens) {
    plain += plain !== '' && startOffset > end ? ` ${image}` : image;
    end = startOffset + image.length;
  }
  return plain;
}

const CLOSING: Readonly<Record<string, string>> = { '(': ')', '{': '}', '<': '>', '[': ']', '"': '"' };

/** What the editor holds ready behind the caret: a bracket that was opened has its other half at once. */
function heldReady(line: string): string {
  const open: string[] = [];
  for (const sign of line) {
    if (sign === open.at(-1)) open.pop();
    else if (open.at(-1) !== '"' && CLOSING[sign] !== undefined) open.push(CLOSING[sign]);
  }
  return open.reverse().join('');
}

/** The list that is open: what it offers for the word that begins there. */
interface Offered {
  readonly from: number;
  readonly words: readonly string[];
}

/** What the client lets pass in place of a barline that it has put in: another barline, and a custos before it. */
const MAY_FOLLOW = /^(?:[|:]|\(custos )/;

export class Writer {
  private readonly workspace = new Workspace(noFiles);
  private before = '';
  private wanted = '';
  /** What stands in the lane. */
  private line = '';
  /** So much of what is wanted stands there. */
  private done = 0;
  private keys = '';
  private offered: Offered | undefined;
  /** A barline with its space that has come by itself where none is wanted yet. */
  private barline = '';

  /** @param text the whole score; what stands below a lane is not there yet while the lane is written */
  constructor(
    private readonly text: string,
    private readonly file = 'written.bent',
  ) {}

  /** The keys for a lane after its opening barline and the space that follows it, to the end of its line. */
  keysFor(block: Block, lane: PlacedLane): string {
    this.before = `${this.text.slice(0, offsetIn(block, lane, 0)).trimEnd()} `;
    this.wanted = plainText(lane.tree);
    this.line = this.givenAtStart(block, lane);
    this.done = this.line.length;
    this.keys = this.line === '' ? '' : ONWARD;
    while (this.done < this.wanted.length) {
      if (!this.takesOffer()) this.press(this.wanted.charAt(this.done));
    }
    return this.keys + END;
  }

  /** The next system is asked for and comes with its lanes; what one of them begins with is overwritten if it is not wanted. */
  private givenAtStart({ offset }: Block, { name, witness }: PlacedLane): string {
    const above = this.text.slice(0, offset);
    if (witness !== undefined || !/^system/m.test(above)) return '';
    const { snippet } = nextSystem(this.workspace.update(this.file, above), above.length);
    const given = new RegExp(`^ *${name.text} *\\| \\$\\{\\d+:(.*)\\}$`, 'm').exec(snippet)?.[1] ?? '';
    return this.wanted.startsWith(given) ? given : '';
  }

  /** Types one sign, with all that this brings. */
  private press(sign: string): void {
    this.keys += sign;
    this.done++;
    const givesWay = this.barline !== '' && this.line.endsWith(this.barline) && /[|:]/.test(sign);
    if (givesWay) this.takeBarline();
    this.line += sign;
    if (sign === ' ') this.askAfterSpace();
    else if (TRIGGERS.includes(sign)) this.offered = this.offer();
    this.settle();
  }

  private project(): { readonly project: Project; readonly offset: number } {
    const upToCaret = this.before + this.line;
    const project = this.workspace.update(this.file, upToCaret + heldReady(this.line));
    return { project, offset: upToCaret.length };
  }

  private askAfterSpace(): void {
    const { project, offset } = this.project();
    const { tree } = project;
    const typed = afterTyping(project, { position: positionOfOffset(tree, offset), reading: 'written' });
    if (typed === null) return;
    const changes = typed.edits.map(({ range: { start, end }, newText }) => {
      const from = offsetOfPosition(tree, start);
      return { offset: from - this.before.length, length: offsetOfPosition(tree, end) - from, text: newText };
    });
    this.barline = typed.kind === 'barline' ? (changes[0]?.text ?? '') : '';
    this.line = edited(this.line, changes);
  }

  private offer(): Offered {
    const { project, offset } = this.project();
    const { items } = completion(project, positionOfOffset(project.tree, offset), true);
    return { from: this.line.length, words: items.map(({ label, textEdit }) => textEdit?.newText ?? label) };
  }

  /** Takes what the open list offers, if it is the only word that begins so, is wanted and saves keys. */
  private takesOffer(): boolean {
    if (this.offered === undefined) return false;
    const { from, words } = this.offered;
    const begun = this.line.slice(from);
    const [word, ...others] = words.filter((one) => one.startsWith(begun));
    const isWanted = word !== undefined && this.wanted.slice(this.done - begun.length).startsWith(word);
    if (others.length > 0 || !isWanted || word.length - begun.length <= TAKE.length) return false;
    this.keys += TAKE;
    this.line = this.line.slice(0, from) + word;
    this.done += word.length - begun.length;
    this.offered = undefined;
    if (word.endsWith(' ')) this.askAfterSpace();
    this.settle();
    return true;
  }

  /** Goes on behind what has come by itself, or takes it away if it is in the way. */
  private settle(): void {
    // The space that comes with a barline stands at the end of the line too.
    if (`${this.wanted} `.startsWith(this.line)) {
      this.done = this.line.length;
      this.barline = '';
    } else if (this.line.endsWith(this.barline) && !MAY_FOLLOW.test(this.wanted.slice(this.done))) {
      this.keys += DELETE.repeat(this.barline.length);
      this.takeBarline();
    }
  }

  private takeBarline(): void {
    this.line = this.line.slice(0, -this.barline.length);
    this.barline = '';
  }
}
