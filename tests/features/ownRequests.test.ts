/** What the client asks beyond the protocol, over a real connection. */
import { afterEach, expect, it } from 'vitest';
import type { Requests } from '../../server/features/protocol';
import { type Client, client } from '../helpers/connection';
import { HEAD } from '../helpers/music';

let one: Client;
afterEach(() => one.end());

const ask = <Name extends keyof Requests>(
  name: Name,
  params: Requests[Name]['params'],
): Promise<Requests[Name]['result']> => one.connection.sendRequest(name, params);

const AIR = `${HEAD}reading plain "as the leaf has it"
  takes L
system upper G2 lower F4 meter C
  dessus | 1 c5 | 4 d
`;
const END = { line: AIR.split('\n').length - 2, character: '  dessus | 1 c5 | 4 d'.length };

it('the bar at the caret is told in words', async () => {
  one = await client();
  const textDocument = { uri: await one.open('air.bent', AIR) };
  expect(await ask('bentside/bar', { textDocument, position: END, reading: 'written' })).toBe(
    'bar 2: 1 of 4 crotchets',
  );
});

it('readings and sources are offered with what the file says of them', async () => {
  one = await client();
  const textDocument = { uri: await one.open('air.bent', AIR) };
  expect(await ask('bentside/choices', { textDocument })).toEqual([
    { name: 'written', kind: 'written', description: '' },
    { name: 'plain', kind: 'reading', description: 'as the leaf has it' },
    { name: 'K', kind: 'source', description: 'the Thornmere Keyboard Book' },
    { name: 'L', kind: 'source', description: 'a loose leaf' },
  ]);
});

it('a file that is not open has no bar and no readings', async () => {
  one = await client();
  const textDocument = { uri: 'file:///music/elsewhere.bent' };
  expect(await ask('bentside/bar', { textDocument, position: END, reading: 'written' })).toBeNull();
  expect(await ask('bentside/choices', { textDocument })).toEqual([]);
});

it('a help page is Markdown, and there is none for a code that does not exist', async () => {
  one = await client();
  expect(await ask('bentside/help', { code: 'bar-too-short' })).toMatch(/^# bar-too-short\n/);
  expect(await ask('bentside/help', { code: 'toString' })).toBeNull();
});

it('the formats are those of the command line', async () => {
  one = await client();
  expect((await ask('bentside/formats', {})).map(({ name }) => name)).toContain('musicxml');
});

it('signs to decide are listed, and settled by what is offered at them', async () => {
  one = await client();
  const text = `${HEAD}reading french\n  signs rameau-1724\nsystem upper G2 lower F4 meter C\n  dessus | 1 c5'turn |||\n`;
  const textDocument = { uri: await one.open('air.bent', text) };
  const [sign] = await ask('bentside/openSigns', { textDocument });
  expect(sign).toMatchObject({ typed: "'turn", bar: '1', voice: 'dessus', isOpen: true });
  const position = sign?.range.start ?? END;
  expect(await ask('bentside/signOffers', { textDocument, position })).toMatchObject([{ id: 'accept' }]);
  const edits = await ask('bentside/settle', { textDocument, position, id: 'accept', reason: 'so' });
  expect(edits?.map(({ newText }) => newText)).toEqual(['note n1 kind performance : "so"\n', '*n1']);
  expect(await ask('bentside/settle', { textDocument, position, id: 'none', reason: '' })).toBeNull();
  expect(await ask('bentside/otherTables', { textDocument, position })).toContain('## rameau-1724');
});
