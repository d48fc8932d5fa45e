/** Texts that come to lie in another folder than that for which they were typed. */
import { parseFile } from '../../grammar/parse';
import { stretchIn } from '../../grammar/place';
import { quoted } from '../../grammar/quoted';
import { edited } from '../document/edits';
import { includedPath } from './includes';

/**
 * The text with its includes as they count from another folder.
 * @param from full name of the file for which it was typed, with `/` between its parts
 * @param to full name of the file in which it will stand
 */
export function includesMoved(text: string, from: string, to: string): string {
  const [old, now] = [folderOf(from), folderOf(to)];
  if (old.join('/') === now.join('/')) return text;
  const changes = parseFile(text).blocks.flatMap((block) =>
    block.statements.flatMap((placed) => {
      const path = includedPath(placed);
      // What is missing or counts from no folder stays as it stands.
      if (path === undefined || path.text.trim() === '' || FROM_ROOT.test(path.text)) return [];
      const { start, end } = stretchIn(block, placed, path);
      return [{ offset: start, length: end - start, text: quoted(relative(now, resolved(old, path.text))) }];
    }),
  );
  return edited(text, changes);
}

/** Beginning of a path that counts from no folder, with the letter of a drive where files have one. */
const FROM_ROOT = /^([a-z]:)?\//i;

const folderOf = (file: string): string[] => file.split('/').slice(0, -1);

/** The parts of a path that counts from a folder. */
function resolved(folder: readonly string[], path: string): string[] {
  const parts = [...folder];
  for (const part of path.split('/')) {
    if (part === '..') parts.pop();
    else if (part !== '.' && part !== '') parts.push(part);
  }
  return parts;
}

function relative(folder: readonly string[], file: readonly string[]): string {
  const parted = folder.findIndex((part, index) => file[index] !== part);
  // On another drive nothing is shared, and no way leads up to it.
  if (parted === 0) return file.join('/');
  const shared = parted < 0 ? folder.length : parted;
  return [...folder.slice(shared).map(() => '..'), ...file.slice(shared)].join('/');
}
