/** What is found where readings are played: made when a file has been quiet for a while, never before its other findings. */
import type { Finding } from '../../grammar/findings/finding';
import { carried } from '../document/carried';
import { findingWhenPlayed, knownWhenPlayed } from '../document/decided';
import { inTurns, type Turns } from '../document/turns';
import type { Current, Documents } from './documents';
import { type Later, Waiting } from './waiting';

/** Milliseconds of quiet in a file before its readings are played. */
const QUIET = 500;

/** What was last told of a file, and of which text. */
interface Told {
  readonly text: string;
  readonly findings: readonly Finding[];
}

export class FindingsWhenPlayed {
  private readonly told = new Map<string, Told>();
  private readonly waiting: Waiting;

  constructor(
    private readonly documents: Documents,
    private readonly turns: Turns,
    later: Later,
    /** Called for each file of which others are now known than were told. */
    private readonly onMade: (uri: string) => void,
  ) {
    this.waiting = new Waiting(later, QUIET);
  }

  changed(uri: string): void {
    this.waiting.start(uri, () => void this.make(uri));
  }

  closed(uri: string): void {
    this.waiting.stop(uri);
    this.told.delete(uri);
  }

  /** Those of a version; until they are made those that were last told, where they now stand. */
  of({ project: { file, tree, analysis } }: Current): readonly Finding[] {
    const told = this.told.get(file);
    const findings = knownWhenPlayed(analysis) ?? (told === undefined ? [] : carried(told.findings, told.text, tree));
    this.told.set(file, { text: tree.text, findings });
    return findings;
  }

  /** A change meanwhile ends it: after that it is made anew. */
  private async make(uri: string): Promise<void> {
    const revision = this.documents.revision(uri);
    const isOver = (): boolean => revision !== this.documents.revision(uri);
    const current = await this.documents.proofed(uri);
    if (current === undefined || isOver()) return;
    const told = this.of(current);
    const made = await inTurns(findingWhenPlayed(current.project.analysis), this.turns, isOver);
    if (made !== undefined && !isOver() && !areAlike(told, made)) this.onMade(uri);
  }
}

const areAlike = (some: readonly Finding[], others: readonly Finding[]): boolean =>
  some.length === others.length && some.every((one, index) => isAlike(one, others[index] as Finding));

const isAlike = (a: Finding, b: Finding): boolean =>
  a.code === b.code &&
  a.message === b.message &&
  a.range.start.offset === b.range.start.offset &&
  a.range.end.offset === b.range.end.offset;
