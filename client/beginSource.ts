/** Begins a source: asks for its letter, leaf, staves and voices, and opens a file with a first system to be typed in. */
import { l10n, SnippetString, window, workspace } from 'vscode';
import { clefNames, FEWEST_LINES, MOST_LINES } from '../grammar/vocabulary/clefs';
import { meterSigns } from '../grammar/vocabulary/meters';
import { isName, isReserved, type NameRole } from '../grammar/vocabulary/names';
import { beginningText, type StaveWish } from './beginning';
import { LANGUAGE } from './language';

/** The usual staves and their voices, by how many staves there are. */
const USUAL: readonly (readonly { readonly name: string; readonly clef: string; readonly voices: string }[])[] = [
  [{ name: 'upper', clef: 'G2', voices: 'dessus' }],
  [
    { name: 'upper', clef: 'C1', voices: 'dessus' },
    { name: 'lower', clef: 'F4', voices: 'basse' },
  ],
  [
    { name: 'upper', clef: 'G2', voices: 'dessus' },
    { name: 'lower', clef: 'F4', voices: 'basse' },
    { name: 'pedal', clef: 'F4', voices: 'pedale' },
  ],
  [
    { name: 'first', clef: 'C1', voices: 'canto' },
    { name: 'second', clef: 'C3', voices: 'alto' },
    { name: 'third', clef: 'C4', voices: 'tenore' },
    { name: 'fourth', clef: 'F4', voices: 'basso' },
  ],
];

const title = (): string => l10n.t('Begin a source');

export async function beginSource(): Promise<void> {
  const siglum = await input(l10n.t('The letter by which the source is cited'), 'K', nameTrouble('witness'));
  if (siglum === undefined) return;
  const description = await input(l10n.t('What the source is'), l10n.t('Thornmere Keyboard Book'));
  if (description === undefined) return;
  const leaf = await input(l10n.t('The leaf or page with which you begin'), '1r', leafTrouble);
  if (leaf === undefined) return;
  const staves = await askStaves();
  if (staves === undefined) return;
  const meter = await pick(
    l10n.t('The metre sign as it is drawn'),
    Object.entries(meterSigns).map(([sign, { describe }]) => ({ label: sign, description: describe })),
  );
  if (meter === undefined) return;
  const document = await workspace.openTextDocument({ language: LANGUAGE });
  const editor = await window.showTextDocument(document);
  await editor.insertSnippet(new SnippetString(beginningText({ siglum, description, leaf, staves, meter })));
}

async function askStaves(): Promise<StaveWish[] | undefined> {
  const counts = USUAL.map((staves) => ({
    label: String(staves.length),
    description: staves.map(({ clef }) => clef).join(' '),
  }));
  const count = await pick(l10n.t('How many staves has a system?'), counts, '2');
  const wishes: StaveWish[] = [];
  for (const usual of USUAL.find((staves) => String(staves.length) === count) ?? []) {
    const wish = await askStave(
      usual,
      wishes.flatMap((one) => one.voices),
    );
    if (wish === undefined) return undefined;
    wishes.push(wish);
  }
  return count === undefined ? undefined : wishes;
}

/** @param taken voices of the staves above */
async function askStave(
  { name, clef, voices }: (typeof USUAL)[number][number],
  taken: readonly string[],
): Promise<StaveWish | undefined> {
  const lineCounts = Array.from({ length: MOST_LINES - FEWEST_LINES + 1 }, (_, more) => ({
    label: String(FEWEST_LINES + more),
  }));
  const lines = await pick(l10n.t('How many lines has the stave “{0}”?', name), lineCounts, '5');
  if (lines === undefined) return undefined;
  const clefs = Object.entries(clefNames)
    .map(([sign, describe]) => ({ label: sign, description: describe }))
    .filter(({ label }) => Number(label.slice(1)) <= Number(lines));
  const drawn = await pick(l10n.t('Which clef stands on the stave “{0}”?', name), clefs, clef);
  if (drawn === undefined) return undefined;
  const typed = await input(
    l10n.t('The voices on the stave “{0}”, from the top, with spaces between', name),
    voices,
    (text) => voicesTrouble(text, taken),
  );
  return typed === undefined ? undefined : { name, lines: Number(lines), clef: drawn, voices: words(typed) };
}

const words = (text: string): string[] => text.trim().split(/\s+/);

const nameTrouble =
  (role: NameRole) =>
  (text: string): string | undefined => {
    if (!isName(text, role)) return l10n.t('A letter, then letters, digits or _.');
    return isReserved(text, role) ? l10n.t('This word has a meaning of its own.') : undefined;
  };

const leafTrouble = (text: string): string | undefined =>
  text.trim() === '' ? l10n.t('A leaf needs a name, such as 3v.') : undefined;

function voicesTrouble(text: string, taken: readonly string[]): string | undefined {
  const names = words(text);
  const all = [...taken, ...names];
  if (new Set(all).size < all.length) return l10n.t('Two voices cannot bear one name.');
  return names.map(nameTrouble('voice')).find((trouble) => trouble !== undefined);
}

const input = (prompt: string, value: string, validateInput?: (text: string) => string | undefined) =>
  window.showInputBox({ title: title(), prompt, value, ignoreFocusOut: true, ...(validateInput && { validateInput }) });

/** One of a list; the usual one stands first. */
async function pick(
  placeHolder: string,
  items: readonly { readonly label: string; readonly description?: string }[],
  usual?: string,
): Promise<string | undefined> {
  const sorted = [...items].sort((a, b) => Number(b.label === usual) - Number(a.label === usual));
  const picked = await window.showQuickPick(sorted, { title: title(), placeHolder, ignoreFocusOut: true });
  return picked?.label;
}
