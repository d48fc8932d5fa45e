/** The server as a client meets it: messages of the Language Server Protocol 3.17 over a real connection. */
import { afterEach, describe, expect, it } from 'vitest';
import {
  CancellationTokenSource,
  CodeActionRequest,
  CompletionRequest,
  DiagnosticRefreshRequest,
  DocumentDiagnosticRequest,
  HoverRequest,
  InlayHintRequest,
  LSPErrorCodes,
  ReferencesRequest,
  RenameRequest,
  SemanticTokensRequest,
  ShowMessageNotification,
  ShowMessageRequest,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver/node';
import type { CannotDraw, Engraver } from '../../server/engraving/engraver';
import { READING } from '../../server/features/protocol';
import { type Client, client, FOLDER, processClient, testEngraver, type Wishes } from '../helpers/connection';
import { HEAD } from '../helpers/music';

const clients: Client[] = [];

async function meet(wishes: Wishes = {}): Promise<Client> {
  const one = await client(wishes);
  clients.push(one);
  return one;
}

afterEach(async () => {
  for (const one of clients.splice(0)) await one.end();
});

/** Accents, an emoji of two code units and a clef beyond the first plane stand before the music. */
const AIR = `${HEAD}title "Ærenprjis 🎼 für Claviere"
system upper C1 lower F4 meter C
  dessus | "Très lent 𝄞" 4 c5 d e f | 1 g5'zz |||
  taille | 1 e4 | c |||
  basse  | 1 c3 | c |||
`;

const line = (text: string, sign: string): number => text.slice(0, text.indexOf(sign)).split('\n').length - 1;
const column = (text: string, sign: string): number =>
  text.indexOf(sign) - text.lastIndexOf('\n', text.indexOf(sign)) - 1;
const rangeOf = (text: string, sign: string) => ({
  start: { line: line(text, sign), character: column(text, sign) },
  end: { line: line(text, sign), character: column(text, sign) + sign.length },
});

const none = (codes: readonly string[]): boolean => codes.length === 0;
const has =
  (code: string) =>
  (codes: readonly string[]): boolean =>
    codes.includes(code);

/** Whoever stands before it waits until it is opened. */
class Door {
  open = (): void => undefined;
  readonly opened = new Promise<void>((resolve) => {
    this.open = resolve;
  });
}

/** A clock by which every piece of work takes as long as a turn may. */
const hurried = (): (() => number) => {
  let time = 0;
  return () => (time += 10);
};

/** A client that looks at the versions of edits. */
const VERSIONS = { workspace: { workspaceEdit: { documentChanges: true } } };

describe('findings sent to a client that does not ask', () => {
  it('come after a note is typed away, and go when it is back', async () => {
    const one = await meet();
    const uri = await one.open('air.bent', AIR);
    await one.findings(uri, (codes) => !codes.includes('bar-too-short'));
    await one.type(uri, rangeOf(AIR, 'e f |'), 'e |');
    expect(await one.findings(uri, has('bar-too-short'))).toContain('bar-too-short');
    const short = AIR.replace('e f |', 'e |');
    await one.type(uri, rangeOf(short, 'e |'), 'e f |');
    expect(await one.findings(uri, (codes) => !codes.includes('bar-too-short'))).not.toContain('bar-too-short');
  });

  it('stand where the sign stands, counted in UTF-16 units behind signs of two units', async () => {
    const one = await meet();
    const text = AIR.replace("g5'zz", "g5'zzzz9");
    const uri = await one.open('air.bent', text);
    await one.findings(uri, has('unknown-sign'));
    const found = one.shown.get(uri)?.find(({ code }) => code === 'unknown-sign');
    expect(found?.range).toEqual(rangeOf(text, "'zzzz9"));
  });

  it('leave nothing behind when the file is closed, or renamed, which is closing and opening', async () => {
    const one = await meet();
    const uri = await one.open('air.bent', AIR.replace('e f |', 'e |'));
    await one.findings(uri, has('bar-too-short'));
    await one.close(uri);
    await one.findings(uri, none);
    const renamed = await one.open('aria.bent', AIR.replace('e f |', 'e |'));
    await one.findings(renamed, has('bar-too-short'));
    expect(one.shown.get(uri)).toEqual([]);
  });

  it('have the levels that the settings of the file say, and keep silent about what is ignored', async () => {
    const one = await meet({
      capabilities: { workspace: { configuration: true } },
      settings: {
        levels: { 'bar-too-short': 'hint', 'unused-declaration': 'ignore', 'unknown-sign': 'rubbish' },
        counsel: false,
      },
    });
    const uri = await one.open('air.bent', AIR.replace('e f |', 'e |').replace("'zz", "'zzzz9"));
    await one.findings(uri, has('bar-too-short'));
    expect(one.shown.get(uri)?.find(({ code }) => code === 'bar-too-short')?.severity).toBe(4);
    expect(one.shown.get(uri)?.find(({ code }) => code === 'unknown-sign')?.severity).toBe(1);
    expect(one.shown.get(uri)?.map(({ code }) => code)).not.toContain('unused-declaration');
  });

  it('lead to the help page, where the client says how it is opened', async () => {
    const one = await meet({ options: { helpAddress: 'command:help?{code}' } });
    const uri = await one.open('air.bent', AIR.replace('e f |', 'e |'));
    await one.findings(uri, has('bar-too-short'));
    const short = one.shown.get(uri)?.find(({ code }) => code === 'bar-too-short');
    expect(short?.codeDescription?.href).toBe('command:help?bar-too-short');
  });

  it('of one file do not wait for another that is still being read', async () => {
    const door = new Door();
    let turns = 0;
    const one = await meet({
      turns: { now: hurried(), pause: () => (turns++ === 0 ? door.opened : Promise.resolve()) },
    });
    // The first that stops for a turn is the file opened first.
    const long = await one.open('long.bent', AIR);
    const short = await one.open('short.bent', AIR.replace('e f |', 'e |'));
    await one.findings(short, has('bar-too-short'));
    expect(one.shown.has(long)).toBe(false);
    door.open();
    await one.findings(long, (codes) => !codes.includes('bar-too-short'));
  });
});

/** Of the seven signs that Chambonnières explains in 1670 none has three waves (from memory). */
const PLAYED = AIR.replace("g5'zz", "g5'zzz").replace(
  'title',
  'signs chambonnieres-1670\nreading mine\ntempo 4 at 60\ntitle',
);

describe('findings at signs, for which the readings are played', () => {
  it('come after the others, stay where their signs are while somebody types, and go with them', async () => {
    const one = await meet();
    const uri = await one.open('air.bent', PLAYED);
    await one.findings(uri, has('sign-not-in-table'));
    const found = () => one.shown.get(uri)?.find(({ code }) => code === 'sign-not-in-table');
    expect(found()?.range).toEqual(rangeOf(PLAYED, "'zzz"));
    expect(found()?.message).toMatch(/^In mine: /);
    const short = PLAYED.replace('4 c5 d e f |', '4 c5 e f |');
    await one.type(uri, rangeOf(PLAYED, 'd e f |'), 'e f |');
    // The first that is sent after the edit, before the readings are played again.
    expect(await one.findings(uri, has('bar-too-short'))).toContain('sign-not-in-table');
    expect(found()?.range).toEqual(rangeOf(short, "'zzz"));
    await one.type(uri, rangeOf(short, "'zzz"), '');
    await one.findings(uri, (codes) => !codes.includes('sign-not-in-table'));
  });

  it('have the levels of the settings', async () => {
    const settings = { levels: { 'sign-not-in-table': 'warning' } };
    const one = await meet({ capabilities: { workspace: { configuration: true } }, settings });
    const uri = await one.open('air.bent', PLAYED);
    await one.findings(uri, has('sign-not-in-table'));
    expect(one.shown.get(uri)?.find(({ code }) => code === 'sign-not-in-table')?.severity).toBe(2);
  });

  it('make a client that asks ask again', async () => {
    const diagnostics = { refreshSupport: true };
    const one = await meet({ capabilities: { textDocument: { diagnostic: {} }, workspace: { diagnostics } } });
    const asked = new Promise<void>((resolve) =>
      one.connection.onRequest(DiagnosticRefreshRequest.type, () => resolve()),
    );
    const uri = await one.open('air.bent', PLAYED);
    await asked;
    const report = await one.connection.sendRequest(DocumentDiagnosticRequest.type, { textDocument: { uri } });
    expect(report.kind === 'full' && report.items.map(({ code }) => code)).toContain('sign-not-in-table');
  });
});

describe('a request that the client takes back', () => {
  it('is answered as cancelled at once, though the file that it asks for is still being read', async () => {
    // Reading stops at its first turn until the door is opened.
    const door = new Door();
    const one = await meet({
      capabilities: { textDocument: { diagnostic: {} } },
      turns: { now: hurried(), pause: () => door.opened },
    });
    const uri = await one.open('air.bent', AIR);
    const stop = new CancellationTokenSource();
    const at = { textDocument: { uri }, position: rangeOf(AIR, "g5'zz").start };
    const wanted = one.connection.sendRequest(DocumentDiagnosticRequest.type, at);
    const taken = [
      one.connection.sendRequest(HoverRequest.type, at, stop.token),
      one.connection.sendRequest(DocumentDiagnosticRequest.type, at, stop.token),
      one.connection.sendRequest(WorkspaceSymbolRequest.type, { query: 'dessus' }, stop.token),
    ].map((answer) => answer.catch(({ code }) => code));
    // What was asked before this is answered has been taken up.
    await one.connection.sendRequest('bentside/alive', {});
    stop.cancel();
    expect(await Promise.all(taken)).toEqual(Array(taken.length).fill(LSPErrorCodes.RequestCancelled));
    door.open();
    expect((await wanted).kind).toBe('full');
  });
});

describe('findings that a client asks for', () => {
  const asks: Wishes = { capabilities: { textDocument: { diagnostic: {} } } };
  const ask = (one: Client, uri: string, previousResultId?: string) =>
    one.connection.sendRequest(DocumentDiagnosticRequest.type, {
      textDocument: { uri },
      ...(previousResultId === undefined ? {} : { previousResultId }),
    });

  it('are told once and are then unchanged, until something changes', async () => {
    const one = await meet(asks);
    expect(one.capabilities.diagnosticProvider).toMatchObject({ interFileDependencies: true });
    const uri = await one.open('air.bent', AIR.replace('e f |', 'e |'));
    const first = await ask(one, uri);
    if (first.kind !== 'full') throw new Error(first.kind);
    expect(first.items.map(({ code }) => code)).toContain('bar-too-short');
    expect(await ask(one, uri, first.resultId)).toEqual({ kind: 'unchanged', resultId: first.resultId });
    await one.type(uri, { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, '\n');
    const moved = await ask(one, uri, first.resultId);
    if (moved.kind !== 'full') throw new Error(moved.kind);
    expect(moved.items[0]?.range.start.line).toBe((first.items[0]?.range.start.line ?? 0) + 1);
    expect(one.shown.size).toBe(0);
  });

  it('of a file closed and opened again are told in full', async () => {
    const one = await meet(asks);
    const uri = await one.open('air.bent', AIR);
    const first = await ask(one, uri);
    await one.close(uri);
    expect(await ask(one, uri, first.kind === 'full' ? first.resultId : undefined)).toEqual({
      kind: 'full',
      items: [],
    });
    await one.open('air.bent', AIR);
    expect((await ask(one, uri, first.kind === 'full' ? first.resultId : undefined)).kind).toBe('full');
  });
});

describe('a score that includes another', () => {
  const HOUSE = 'bentside 1\neditor TK "The editor of Thornmere"\n';
  const SCORE = `${AIR}include "shared/house.bent"\nnote n1 by TK : "a sharp is wanting"\n`;

  it('is read again when the other is typed in', async () => {
    const one = await meet({ files: { 'shared/house.bent': HOUSE } });
    const uri = await one.open('air.bent', SCORE);
    await one.findings(uri, (codes) => !codes.includes('unknown-editor'));
    const house = await one.open('shared/house.bent', HOUSE);
    await one.type(house, rangeOf(HOUSE, 'editor TK'), 'editor XY');
    expect(await one.findings(uri, has('unknown-editor'))).toContain('unknown-editor');
    await one.close(house);
    await one.findings(uri, (codes) => !codes.includes('unknown-editor'));
  });

  it('is read with what the other was saved as while it was open', async () => {
    const files: Record<string, string> = { 'shared/house.bent': HOUSE };
    const one = await meet({ files });
    const more = SCORE.replace('by TK', 'by XY');
    const uri = await one.open('air.bent', more);
    await one.findings(uri, has('unknown-editor'));
    const house = await one.open('shared/house.bent', HOUSE);
    await one.type(house, rangeOf(HOUSE, 'editor TK'), 'editor XY');
    await one.findings(uri, (codes) => !codes.includes('unknown-editor'));
    files['shared/house.bent'] = HOUSE.replace('TK', 'XY');
    await one.close(house);
    await one.type(uri, { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, '\n');
    await new Promise((resolve) => setTimeout(resolve, 400));
    expect(one.shown.get(uri)?.map(({ code }) => code)).not.toContain('unknown-editor');
  });

  it('cannot reach beyond the folder of the work', async () => {
    const one = await meet({ files: { '../secret.bent': HOUSE } });
    const uri = await one.open('air.bent', AIR.replace('title', 'include "../../secret.bent"\ntitle'));
    expect(await one.findings(uri, has('include-refused'))).toContain('include-refused');
  });
});

it('quick fixes answer to the finding that they mend', async () => {
  const one = await meet();
  const text = AIR.replace("g5'zz", "g5'zigzagg");
  const uri = await one.open('air.bent', text);
  await one.findings(uri, has('unknown-sign'));
  const actions = await one.connection.sendRequest(CodeActionRequest.type, {
    textDocument: { uri },
    range: rangeOf(text, "'zigzagg"),
    context: { diagnostics: [...(one.shown.get(uri) ?? [])].filter(({ code }) => code === 'unknown-sign') },
  });
  const [fix] = actions ?? [];
  expect(fix).toMatchObject({ kind: 'quickfix', isPreferred: true, diagnostics: [{ code: 'unknown-sign' }] });
});

describe('a hover', () => {
  const ask = async (wishes: Wishes): Promise<string> => {
    const one = await meet({ capabilities: { workspace: { configuration: true } }, ...wishes });
    const uri = await one.open('air.bent', AIR);
    const position = rangeOf(AIR, "g5'zz").start;
    const made = await one.connection.sendRequest(HoverRequest.type, { textDocument: { uri }, position });
    return JSON.stringify(made?.contents);
  };

  it('has the words and the picture of the bar', async () => {
    const told = await ask({});
    expect(told).toContain('**g′′ (G5)**');
    expect(told).toContain('](data:image/svg+xml;base64,');
  });

  it('has the words alone where no picture is wished for', async () => {
    expect(await ask({ settings: { hover: { picture: false } } })).not.toContain('data:image');
  });
});

it('a byte order mark that a client keeps is counted in the places of the first line', async () => {
  const text = '\ufeffbentside 1 title\ntitle "Air"\n';
  const one = await meet();
  const uri = await one.open('air.bent', text);
  await one.findings(uri, has('byte-order-mark'));
  const [slip] = (one.shown.get(uri) ?? []).filter(({ range }) => range.end.character > 12 && range.start.line === 0);
  expect(slip?.range).toEqual(rangeOf(text, 'title'));
  const tokens = await one.connection.sendRequest(SemanticTokensRequest.type, { textDocument: { uri } });
  expect(tokens?.data.slice(0, 3)).toEqual([0, 1, 'bentside'.length]);
  const at = { textDocument: { uri }, position: rangeOf(text, 'bentside').start };
  const told = await one.connection.sendRequest(HoverRequest.type, at);
  expect(told?.range).toEqual(rangeOf(text, 'bentside 1 title'));
});

describe('the reading in which the user sees a file', () => {
  const text = AIR.replace("1 g5'zz", '2 g5 <K: 2 a5 ; L: 4 b5 a>');
  const seenAs = async (reading: string) => {
    const one = await meet();
    const uri = await one.open('air.bent', text);
    await one.connection.sendNotification(READING, { textDocument: { uri }, reading });
    const at = { textDocument: { uri }, position: rangeOf(text, 'g5 <').start };
    const made = await one.connection.sendRequest(HoverRequest.type, at);
    const [words = '', picture = ''] = JSON.stringify(made?.contents).split('![');
    return { words, picture };
  };

  it('is that of the words of a hover and of the bar drawn in it', async () => {
    const [main, leaf] = [await seenAs('written'), await seenAs('L')];
    expect(main.words).not.toContain('in L');
    expect(leaf.words).toContain('in L');
    expect(main.picture).toContain('data:image');
    expect(leaf.picture).not.toBe(main.picture);
  });

  it('is that of the hints beside the notes', async () => {
    const one = await meet({
      capabilities: { workspace: { configuration: true } },
      settings: { inlayHints: { barNumbers: false, accidentals: false, leaps: true } },
    });
    const leaping = AIR.replace("1 g5'zz", '2 g4 <K: 2 a4 ; L: 4 g5 c>');
    const uri = await one.open('air.bent', leaping);
    const whole = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
    const hints = async (): Promise<unknown[]> => {
      const all = await one.connection.sendRequest(InlayHintRequest.type, { textDocument: { uri }, range: whole });
      return (all ?? []).filter(({ position }) => position.line === line(leaping, '<K')).map(({ label }) => label);
    };
    expect(await hints()).toEqual([]);
    await one.connection.sendNotification(READING, { textDocument: { uri }, reading: 'L' });
    // The octave sticks: in L the c is a fifth below the g.
    expect(await hints()).toEqual(['5']);
  });
});

describe('where what draws has gone', () => {
  const GONE = { failure: 'out of reach' };
  const throwing = async (): Promise<Engraver> => ({
    ...(await testEngraver()),
    draw: () => {
      throw new Error('a slip of the pen');
    },
  });
  const hoverOf = async (one: Client): Promise<string> => {
    const at = { textDocument: { uri: await one.open('air.bent', AIR) }, position: rangeOf(AIR, "g5'zz").start };
    return JSON.stringify((await one.connection.sendRequest(HoverRequest.type, at))?.contents);
  };

  it.each<[string, () => Promise<Engraver | CannotDraw>]>([
    ['is not to be had', () => Promise.resolve(GONE)],
    ['cannot be loaded', () => Promise.reject(new Error('no such file'))],
    ['throws', throwing],
  ])('a hover has its words, whether it %s', async (_, engraver) => {
    const told = await hoverOf(await meet({ engraver }));
    expect(told).toContain('**g′′ (G5)**');
    expect(told).not.toContain('data:image');
  });

  it('it is looked for again by the next who asks', async () => {
    let asked = 0;
    const one = await meet({ engraver: () => (++asked === 1 ? Promise.resolve(GONE) : testEngraver()) });
    expect(await hoverOf(one)).not.toContain('data:image');
    expect(await hoverOf(one)).toContain('data:image');
  });

  it('a request that fails has no answer, and the next one is answered', async () => {
    const one = await meet({ engraver: () => Promise.reject(new Error('the engraver has gone')) });
    const uri = await one.open('air.bent', AIR);
    const leaf = { textDocument: { uri }, reading: 'written', clefs: 'source', page: 0 };
    expect(await one.connection.sendRequest('bentside/page', leaf)).toBeNull();
    const at = { textDocument: { uri }, position: rangeOf(AIR, 'zz').start };
    expect(await one.connection.sendRequest(CompletionRequest.type, at)).toMatchObject({ isIncomplete: false });
  });
});

describe('names in scores of the folder that are not open', () => {
  const files = {
    'house.bent': 'bentside 1\nsource T "Thornmere spinet book"\n',
    'aria.bent': 'bentside 1\ninclude "house.bent"\nreading x\n  takes T\n',
    'apart.bent': 'bentside 1\nsource T "another T"\nreading y\n  takes T\n',
  };
  const place = { position: { line: 1, character: 7 } };

  it('are found by a few of their letters, each once', async () => {
    const one = await meet({ files, options: { canRead: true } });
    await one.open('house.bent', files['house.bent']);
    const found = await one.connection.sendRequest(WorkspaceSymbolRequest.type, { query: 't' });
    const where = (found ?? []).map(({ name, location }) => `${name} ${location.uri.slice(FOLDER.length)}`);
    expect(where.sort()).toEqual(['T apart.bent', 'T house.bent']);
  });

  it('are written anew and found where they are shared, also by what was typed since', async () => {
    const one = await meet({ files, options: { canRead: true }, capabilities: VERSIONS });
    const uri = await one.open('house.bent', files['house.bent']);
    await one.type(uri, { start: { line: 1, character: 0 }, end: { line: 1, character: 0 } }, '// ours\n');
    const at = { textDocument: { uri }, position: { line: 2, character: 7 } };
    const edit = await one.connection.sendRequest(RenameRequest.type, { ...at, newName: 'S' });
    const changes = (edit?.documentChanges ?? []).flatMap((change) => ('edits' in change ? [change] : []));
    expect(changes.map(({ textDocument, edits }) => [textDocument.uri, edits.map(({ range }) => range.start)])).toEqual(
      [
        [uri, [{ line: 2, character: 7 }]],
        [`${FOLDER}aria.bent`, [{ line: 3, character: 8 }]],
      ],
    );
    const context = { includeDeclaration: true };
    const found = await one.connection.sendRequest(ReferencesRequest.type, { ...at, context });
    expect(found).toHaveLength(2);
  });

  it('stay as they are, which is told, where the client cannot say what there is', async () => {
    const one = await meet({ files });
    const told: string[] = [];
    one.connection.onNotification(ShowMessageNotification.type, ({ message }) => void told.push(message));
    one.connection.onRequest(ShowMessageRequest.type, ({ message }) => void told.push(message));
    const uri = await one.open('house.bent', files['house.bent']);
    const wish = { textDocument: { uri }, ...place, newName: 'S' };
    const edit = await one.connection.sendRequest(RenameRequest.type, wish);
    expect(Object.keys(edit?.changes ?? {})).toEqual([uri]);
    expect(told.join()).toContain('not open');
  });
});

it('edits are those of the version that they were made for, where the client can refuse them', async () => {
  const one = await meet({ capabilities: VERSIONS });
  const apart = AIR.replace("g5'zz", "g5 'zz");
  const uri = await one.open('air.bent', apart);
  await one.type(uri, { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, '// ours\n');
  const { start, end } = rangeOf(apart, "g5 'zz");
  const range = { start: { ...start, line: start.line + 1 }, end: { ...end, line: end.line + 1 } };
  const wish = { textDocument: { uri }, range, context: { diagnostics: [], only: ['source.fixAll'] } };
  const [mended] = (await one.connection.sendRequest(CodeActionRequest.type, wish)) ?? [];
  const edit = mended !== undefined && 'edit' in mended ? mended.edit : undefined;
  expect(edit).toMatchObject({ documentChanges: [{ textDocument: { uri, version: 2 } }] });
});

it('the bundled server speaks over the channel of its process', async () => {
  const one = await processClient();
  const uri = await one.open('air.bent', AIR.replace('e f |', 'e |'));
  expect(uri.startsWith(FOLDER)).toBe(true);
  expect(await one.findings(uri, has('bar-too-short'))).toContain('bar-too-short');
  await one.end();
});
