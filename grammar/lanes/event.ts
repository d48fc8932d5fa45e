/**
 * Events as nodes of the tree.
 *
 * A score writes the same few notes over and over. What is written of an event is therefore kept once for all that are written
 * alike, with places that count from the event's beginning; the node itself knows only where it stands, and gives its parts
 * their places when it is asked for them. That makes trees less than half as large.
 */
import { detached } from '../detached';
import { unquoted } from '../quoted';
import type { Annotation, EventItem, EventWhat, Mark, Member, Suffix, TieForm } from '../tree';
import { LONGEST, markOf, memberOf, tieOf } from './forms';

/** What is written of an event; its places count from the event's beginning. */
export interface Written {
  readonly what: EventWhat;
  readonly len: number;
  readonly members: readonly Member[];
  /** Of a rest, a gap or a lone `=`. */
  readonly suffixes: readonly Suffix[];
  readonly tie: TieForm | undefined;
  /** One of its signs has a colon, an asterisk or a bracket. */
  readonly mayCite: boolean;
}

const citing = /[:*(]/;

class WrittenEvent implements EventItem {
  readonly kind = 'event';

  constructor(
    readonly pos: number,
    readonly len: number,
    readonly written: Written,
  ) {}

  get what(): EventWhat {
    return this.written.what;
  }

  get members(): readonly Member[] {
    const { members } = this.written;
    return this.pos === 0 || members.length === 0 ? members : members.map((member) => movedMember(member, this.pos));
  }

  get suffixes(): readonly Suffix[] {
    return moved(this.written.suffixes, this.pos);
  }

  get tie(): TieForm | undefined {
    return this.written.tie;
  }
}

function movedSuffix(suffix: Suffix, by: number): Suffix {
  const pos = suffix.pos + by;
  return suffix.kind === 'mark' ? { kind: 'mark', pos, len: suffix.len, form: suffix.form } : { ...suffix, pos };
}

const moved = (suffixes: readonly Suffix[], by: number): readonly Suffix[] =>
  by === 0 || suffixes.length === 0 ? suffixes : suffixes.map((suffix) => movedSuffix(suffix, by));

const movedMember = ({ pos, len, spelling, stave, tie, suffixes }: Member, by: number): Member => ({
  pos: pos + by,
  len,
  spelling,
  stave,
  tie,
  suffixes: moved(suffixes, by),
});

/** The node of an event that begins at a place. */
export const eventAt = (pos: number, written: Written): EventItem => new WrittenEvent(pos, written.len, written);

// ─── what is written, kept by its text ───────────────────────────────────────────────────────────────────────────────

/** Written events kept at most; beyond, sharing starts afresh. */
const KEPT = 20_000;

/** What is written so far, and what is known to go on from it by the text of the next sign. */
interface Known extends Written {
  readonly next: Map<string, Known>;
}

const beginnings = new Map<string, Known>();
let count = 0;

const known = (written: Written): Known => ({ ...written, next: new Map() });

function keep(under: Map<string, Known>, text: string, written: Written): Known {
  const made = known(written);
  if (text.length > LONGEST) return made;
  if (count >= KEPT) {
    beginnings.clear();
    count = 0;
  }
  count++;
  under.set(detached(text), made);
  return made;
}

const noMembers: readonly Member[] = [];
const noSuffixes: readonly Suffix[] = [];

/** What is written of an event by its first sign alone. */
export const beginning = (what: EventWhat, text: string): Written =>
  beginnings.get(text) ?? keep(beginnings, text, begun(what, text));

function begun(what: EventWhat, text: string): Written {
  const len = text.length;
  const mayCite = citing.test(text);
  const bare = { what, len, members: noMembers, suffixes: noSuffixes, tie: undefined, mayCite };
  if (what === 'repeat') return { ...bare, tie: tieOf(detached(text)) };
  return what === 'note' ? { ...bare, members: [memberAt(0, text)] } : bare;
}

const memberAt = (pos: number, text: string): Member => ({
  pos,
  len: text.length,
  ...memberOf(text),
  suffixes: noSuffixes,
});

/** Parts of an event that are kept for others written alike; a copy for each further part would take quadratic time. */
const FEW = 24;

const partsOf = ({ members, suffixes }: Written): number =>
  members.length + suffixes.length + (members.at(-1)?.suffixes.length ?? 0);

/** What is written of an event of many parts: its own, so that it can grow in place. */
class Growing implements Written {
  readonly what: EventWhat;
  len: number;
  readonly members: Member[];
  readonly suffixes: Suffix[];
  readonly tie: TieForm | undefined;
  mayCite: boolean;
  /** Of the last member. */
  private tail: Suffix[];

  constructor({ what, len, members, suffixes, tie, mayCite }: Written) {
    this.what = what;
    this.len = len;
    this.members = [...members];
    this.suffixes = [...suffixes];
    this.tie = tie;
    this.mayCite = mayCite;
    this.tail = [...(members.at(-1)?.suffixes ?? [])];
  }

  grow(text: string, at: number): this {
    this.len = at + text.length;
    this.mayCite ||= citing.test(text);
    if (text.startsWith('-')) {
      this.members.push(memberAt(at, text));
      this.tail = [];
      return this;
    }
    const suffix = suffixAt(text, at);
    const last = this.members.pop();
    if (last === undefined) this.suffixes.push(suffix);
    else {
      this.tail.push(suffix);
      this.members.push({ ...last, len: this.len - last.pos, suffixes: this.tail });
    }
    return this;
  }
}

/** The event with one sign more (a mark, an annotation, a further member) that stands at a place counted from its beginning. */
export function goingOn(written: Written, text: string, at: number): Written {
  if (written instanceof Growing) return written.grow(text, at);
  if (partsOf(written) >= FEW) return new Growing(written).grow(text, at);
  // With white space between, which is reported, the text alone does not tell what is written where.
  if (at !== written.len || !('next' in written)) return extended(written, text, at);
  const { next } = written as Known;
  return next.get(text) ?? keep(next, text, extended(written, text, at));
}

function extended({ what, members, suffixes, tie, mayCite: before }: Written, text: string, at: number): Written {
  // What is known to go on from the event as it was does not go on from what is made of it.
  const mayCite = before || citing.test(text);
  const written: Written = { what, len: at, members, suffixes, tie, mayCite };
  const len = at + text.length;
  if (text.startsWith('-')) return { ...written, len, members: [...written.members, memberAt(at, text)] };
  const suffix = suffixAt(text, at);
  const last = written.members.at(-1);
  if (last === undefined) return { ...written, len, suffixes: [...written.suffixes, suffix] };
  const decorated = { ...last, len: len - last.pos, suffixes: [...last.suffixes, suffix] };
  return { ...written, len, members: [...written.members.slice(0, -1), decorated] };
}

// ─── marks and annotations ───────────────────────────────────────────────────────────────────────────────────────────

/** The annotation `*"…"` or `*n7` at a place. */
export function annotationOf(image: string, pos: number): Annotation {
  const inner = image.slice(1);
  const len = image.length;
  return inner.startsWith('"')
    ? { kind: 'annotation', pos, len, text: unquoted(inner) }
    : { kind: 'annotation', pos, len, ref: inner };
}

/** The mark or annotation at a place. */
export const suffixAt = (image: string, pos: number): Suffix =>
  image.startsWith('*')
    ? annotationOf(image, pos)
    : { kind: 'mark', pos, len: image.length, form: markOf(image) as Mark['form'] };
