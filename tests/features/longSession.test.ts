/** The server in a long session and on a large file: what it keeps, what it reads, and up to which size it does everything. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterEach, describe, expect, it } from 'vitest';
import {
  CodeLensRequest,
  CompletionRequest,
  DocumentDiagnosticRequest,
  DocumentFormattingRequest,
  DocumentSymbolRequest,
  FoldingRangeRequest,
  HoverRequest,
  InlayHintRequest,
  SemanticTokensRequest,
} from 'vscode-languageserver/node';
import { generateScore } from '../bench/generateScore';
import { type Client, client, FOLDER, type Wishes } from '../helpers/connection';
import { HEAD } from '../helpers/music';

/** Characters up to which everything is tried; README.md says so. */
const LARGEST = 1_000_000;

const MB = 2 ** 20;
const clients: Client[] = [];

async function meet(wishes: Wishes = {}): Promise<Client> {
  const one = await client({
    capabilities: { textDocument: { diagnostic: {} }, workspace: { configuration: true } },
    settings: { inlayHints: { barNumbers: true, accidentals: true, leaps: true } },
    ...wishes,
  });
  clients.push(one);
  return one;
}

afterEach(async () => {
  for (const one of clients.splice(0)) await one.end();
});

const ask = (one: Client, uri: string) => {
  const textDocument = { uri };
  const { connection } = one;
  return {
    findings: () => connection.sendRequest(DocumentDiagnosticRequest.type, { textDocument }),
    tokens: () => connection.sendRequest(SemanticTokensRequest.type, { textDocument }),
    hover: (line: number, character: number) =>
      connection.sendRequest(HoverRequest.type, { textDocument, position: { line, character } }),
    completion: (line: number, character: number) =>
      connection.sendRequest(CompletionRequest.type, { textDocument, position: { line, character } }),
    outline: () => connection.sendRequest(DocumentSymbolRequest.type, { textDocument }),
    folding: () => connection.sendRequest(FoldingRangeRequest.type, { textDocument }),
    lenses: () => connection.sendRequest(CodeLensRequest.type, { textDocument }),
    layout: () =>
      connection.sendRequest(DocumentFormattingRequest.type, {
        textDocument,
        options: { tabSize: 2, insertSpaces: true },
      }),
    hints: (last: number) =>
      connection.sendRequest(InlayHintRequest.type, {
        textDocument,
        range: { start: { line: 0, character: 0 }, end: { line: last, character: 0 } },
      }),
  };
};

describe('a session of 500 edits on 200 kB', () => {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  const heap = async (): Promise<number> => {
    for (let times = 0; times < 3; times++) {
      await new Promise((resolve) => setImmediate(resolve));
      collect();
    }
    return process.memoryUsage().heapUsed;
  };

  it('leaves no more than 10 MB behind, with hovers, proposals, tokens and findings between', {
    timeout: 300_000,
  }, async () => {
    const system = (number: number): string => `system
  dessus | ${'4 c5 d e f | 8 g a b c5 4 d5 e | '.repeat(5)}
  basse  | ${'1 c3 | d | '.repeat(4)}1 c3 "${number}" | d |
`;
    const head = `${HEAD}system upper G2 lower F4 meter C\n  dessus | 1 c5 |\n  basse | 1 c3 |\n`;
    const lines = head.split('\n').length - 1;
    const systems = Math.ceil(200_000 / system(1000).length);
    const one = await meet({ settings: { hover: { picture: false } } });
    const uri = await one.open(
      'long.bent',
      head + Array.from({ length: systems }, (_, at) => system(1000 + at)).join(''),
    );
    const { findings, tokens, hover, completion } = ask(one, uri);
    let after50 = 0;
    for (let edit = 0; edit < 500; edit++) {
      const line = lines + 3 * ((edit * 37) % systems) + 1;
      // Each edit makes a bar that was never there, and takes it away again in another one's stead.
      const note = `4 c5 d e f "${edit}" | `;
      await one.type(uri, { start: { line, character: 11 }, end: { line, character: 11 } }, note);
      expect(await hover(line, 13)).not.toBeNull();
      expect(await completion(line, 11)).not.toBeNull();
      if (edit % 5 === 0) expect((await tokens())?.data.length).toBeGreaterThan(1000);
      if (edit % 5 === 0) expect((await findings()).kind).toBe('full');
      await one.type(uri, { start: { line, character: 11 }, end: { line, character: 11 + note.length } }, '');
      if (edit === 50) after50 = await heap();
    }
    expect((await heap()) - after50).toBeLessThan(10 * MB);
  });
});

it('nothing of a folder is read but what is open and what that includes', async () => {
  const asked: string[] = [];
  const one = await client({
    capabilities: { workspace: { configuration: true, didChangeWatchedFiles: { dynamicRegistration: true } } },
    disk: {
      read: (uri) => {
        asked.push(uri.slice(FOLDER.length));
        return uri.endsWith('shared/house.bent') ? 'bentside 1\nsource K "the Thornmere Keyboard Book"\n' : null;
      },
      real: (uri) => uri,
    },
  });
  clients.push(one);
  const uri = await one.open(
    'air.bent',
    'bentside 1\ninclude "shared/house.bent"\nvoice dessus\nsystem dessus G2 meter C\n  dessus | 1 c5 |||\n',
  );
  await one.findings(uri, () => true);
  await ask(one, uri).outline();
  expect([...new Set(asked)]).toEqual(['shared/house.bent']);
});

it(`a score of ${LARGEST / 1_000_000} million characters has everything`, { timeout: 300_000 }, async () => {
  const text = generateScore(LARGEST);
  const one = await meet();
  const uri = await one.open('large.bent', text);
  const { findings, tokens, hover, outline, folding, lenses, layout, hints } = ask(one, uri);
  const report = await findings();
  expect(report.kind === 'full' && report.items.length).toBeGreaterThan(0);
  expect((await tokens())?.data.length).toBeGreaterThan(100_000);
  const last = text.trimEnd().split('\n').length - 1;
  const note = /[a-g]\d?'/.exec(text.split('\n')[last] ?? '')?.index ?? 0;
  expect(JSON.stringify(await hover(last, note))).toContain('data:image/svg+xml');
  for (const answer of [await outline(), await folding(), await hints(last)])
    expect(answer?.length).toBeGreaterThan(100);
  for (const answer of [await lenses(), await layout()]) expect(Array.isArray(answer)).toBe(true);
});
