/** A bar that closed itself, and a user who types faster than the editor answers. */
import { beforeEach, expect, it } from 'vitest';
import type { Readings } from '../../client/readings';
import type { Server } from '../../client/server';
import { TypingAids } from '../../client/typing';
import { Position, Range, textChanged, window } from '../helpers/vscode';

interface Change {
  readonly range: Range;
  readonly text: string;
}

/** An editor with one line of text, which takes an edit of the client's, and tells of it, when the test says so. */
function slowEditor(text: string) {
  const document = {
    languageId: 'bentside',
    uri: 'file:///air.bent',
    version: 1,
    text,
    getText: ({ start, end }: Range) => document.text.slice(start.character, end.character),
  };
  const change = (one: Change): void => {
    const { start, end } = one.range;
    document.text = document.text.slice(0, start.character) + one.text + document.text.slice(end.character);
    document.version++;
    textChanged.fire({ document, contentChanges: [one] });
  };
  const waiting: { readonly version: number; readonly changes: Change[]; readonly tell: (isDone: boolean) => void }[] =
    [];
  const edit = (make: (builder: object) => void): Promise<boolean> => {
    const changes: Change[] = [];
    const replace = (range: Range, put: string) => changes.push({ range, text: put });
    make({
      replace,
      insert: (at: Position, put: string) => replace(new Range(at, at), put),
      delete: (range: Range) => replace(range, ''),
    });
    return new Promise((tell) => waiting.push({ version: document.version, changes, tell }));
  };
  /** The oldest edit of the client's is made, if no newer text has come; the client is told by what is returned. */
  const take = async (): Promise<() => void> => {
    await expect.poll(() => waiting.length).toBeGreaterThan(0);
    const next = waiting.shift();
    const isDone = next?.version === document.version;
    if (isDone) next.changes.forEach(change);
    return () => next?.tell(isDone);
  };
  const type = (sign: string): void => {
    const at = new Position(0, document.text.length);
    change({ range: new Range(at, at), text: sign });
  };
  return { document, edit, take, type, waiting };
}

/** Whoever is asked after the space that fills the bar says that it is full. */
function begin(text: string) {
  const editor = slowEditor(text);
  window.activeTextEditor = editor;
  const ask = async (_name: string, { position }: { readonly position: Position }) => ({
    kind: 'barline',
    edits: [{ range: { start: position, end: position }, newText: '| ' }],
  });
  new TypingAids({ ask } as unknown as Server, { of: () => 'written' } as unknown as Readings);
  return editor;
}

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));

beforeEach(() => textChanged.clear());

it('gives way to the barline that is typed before it is told that it stands', async () => {
  const { document, take, type } = begin('1 c5');
  type(' ');
  const tellBarline = await take();
  expect(document.text).toBe('1 c5 | ');
  type('|');
  tellBarline();
  (await take())();
  expect(document.text).toBe('1 c5 |');
});

it('does not come where the barline was typed first, and takes nothing away afterwards', async () => {
  const { document, take, type, waiting } = begin('1 c5');
  type(' ');
  await expect.poll(() => waiting.length).toBe(1);
  type('|');
  (await take())();
  await settled();
  type('|');
  await settled();
  expect(document.text).toBe('1 c5 ||');
  expect(waiting).toEqual([]);
});

it('gives way though the typing goes on', async () => {
  const { document, take, type, waiting } = begin('1 c5');
  type(' ');
  (await take())();
  await settled();
  type('|');
  await expect.poll(() => waiting.length).toBe(1);
  type(':');
  (await take())();
  (await take())();
  expect(document.text).toBe('1 c5 |:');
});
