/** How long the language server takes on a score of 100 kB, over a real connection, beside a stylesheet of that size. */
import {
  CompletionRequest,
  DocumentDiagnosticRequest,
  HoverRequest,
  SemanticTokensRequest,
} from 'vscode-languageserver/node';
import type { Engraver } from '../../server/engraving/engraver';
import { type Client, client } from '../helpers/connection';
import { type Line, median, ms } from './measure';
import { completeStylesheet, hoverStylesheet, openStylesheet, parseStylesheet, proofStylesheet } from './stylesheet';

interface Place {
  readonly line: number;
  readonly character: number;
}

const placeOf = (text: string, offset: number): Place => {
  const before = text.slice(0, offset).split('\n');
  return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
};

/** The median of the processor's time of a task, all threads together: of whoever asks as of whoever answers. */
async function medianOf(task: (round: number) => unknown, rounds: number): Promise<number> {
  const times: number[] = [];
  for (let round = -Math.ceil(rounds / 5); round < rounds; round++) {
    const time = await timeOf(() => task(round));
    if (round >= 0) times.push(time);
  }
  return median(times);
}

async function timeOf(task: () => unknown): Promise<number> {
  const start = process.cpuUsage();
  const made = await task();
  const { user, system } = process.cpuUsage(start);
  if (made === undefined || made === null) throw new Error('nothing was answered');
  return (user + system) / 1000;
}

interface Open {
  readonly one: Client;
  readonly uri: string;
}

/** A score whose findings are asked for. */
async function openScore(text: string, engraver: Engraver, picture: boolean): Promise<Open> {
  const one = await client({
    capabilities: { textDocument: { diagnostic: {} }, workspace: { configuration: true } },
    settings: { hover: { picture } },
    engraver: () => Promise.resolve(engraver),
  });
  const uri = await one.open('measure.bent', text);
  await one.connection.sendRequest(DocumentDiagnosticRequest.type, { textDocument: { uri } });
  return { one, uri };
}

/** @param score and stylesheet of as many characters */
export async function featureTimes(
  score: string,
  stylesheet: string,
  engraver: Engraver,
  rounds: number,
): Promise<Line[]> {
  const sign = score.indexOf("'", score.length / 2);
  const [mark, note] = [placeOf(score, sign + 1), placeOf(score, sign)];
  const { one, uri } = await openScore(score, engraver, false);
  const at = { textDocument: { uri }, position: mark };
  const ask = one.connection;
  const before = placeOf(score, score.lastIndexOf('| ', sign) + 2);
  const findings = await medianOf(async (round) => {
    // No version is like one of the last few, which a document still knows.
    const typed = `"${round}" `;
    await one.type(uri, { start: before, end: before }, typed);
    const report = await ask.sendRequest(DocumentDiagnosticRequest.type, { textDocument: { uri } });
    await one.type(uri, { start: before, end: { ...before, character: before.character + typed.length } }, '');
    return report;
  }, rounds);
  const completion = await medianOf(() => ask.sendRequest(CompletionRequest.type, at), rounds);
  const hover = await medianOf(() => ask.sendRequest(HoverRequest.type, { ...at, position: note }), rounds);
  const tokens = await medianOf(() => ask.sendRequest(SemanticTokensRequest.type, { textDocument: { uri } }), rounds);
  const drawing = await openScore(score, engraver, true);
  const picture = await medianOf(
    () => drawing.one.connection.sendRequest(HoverRequest.type, { textDocument: { uri }, position: note }),
    rounds,
  );
  const signWords = await hoverAfterEdit({ one, uri }, before, mark, rounds);
  const signPicture = await hoverAfterEdit(drawing, before, mark, rounds);
  const css = await stylesheetTimes(stylesheet, rounds);
  return [
    line('findings after an edit', findings, 50, css.findings),
    line('completion after an apostrophe', completion, 20, css.completion),
    line('hover, words', hover, 20, css.hover),
    line('hover over a sign right after an edit, words', signWords, 20),
    line('semantic tokens of the whole', tokens, 60),
    line('hover with the picture of the bar, warm', picture, 60),
    line('hover over a sign right after an edit, with the picture', signPicture, 60),
  ];
}

/** A hover over a sign when its bar was just written in: nothing of that version is known yet. Its findings come first, and are not counted. */
async function hoverAfterEdit({ one, uri }: Open, bar: Place, sign: Place, rounds: number): Promise<number> {
  const times: number[] = [];
  const textDocument = { uri };
  for (let round = -Math.ceil(rounds / 5); round < rounds; round++) {
    const typed = `"hover ${round}" `;
    await one.type(uri, { start: bar, end: bar }, typed);
    await one.connection.sendRequest(DocumentDiagnosticRequest.type, { textDocument });
    const position = { ...sign, character: sign.character + typed.length };
    const time = await timeOf(() => one.connection.sendRequest(HoverRequest.type, { textDocument, position }));
    if (round >= 0) times.push(time);
    await one.type(uri, { start: bar, end: { ...bar, character: bar.character + typed.length } }, '');
  }
  return median(times);
}

/** The same of a stylesheet, asked directly: no message is sent. */
async function stylesheetTimes(
  text: string,
  rounds: number,
): Promise<{ findings: number; completion: number; hover: number }> {
  const colon = text.indexOf(': ', text.length / 2) + ': '.length;
  const [value, property] = [placeOf(text, colon), placeOf(text, colon - ': '.length - 1)];
  const document = openStylesheet(text);
  const parsed = parseStylesheet(document);
  return {
    findings: await medianOf((round) => proofStylesheet(openStylesheet(`${text}/* ${round} */`)), rounds),
    completion: await medianOf(() => completeStylesheet(document, parsed, value), rounds),
    hover: await medianOf(() => hoverStylesheet(document, parsed, property), rounds),
  };
}

function line(what: string, time: number, limit: number, stylesheet?: number): Line {
  const beside =
    stylesheet === undefined ? '' : `; stylesheet ${ms(stylesheet)}, ${(time / stylesheet).toFixed(2)} of it`;
  return { what: `${what}, to ${limit} ms${beside}`, measured: ms(time), ratio: time / limit, wished: 1 };
}
