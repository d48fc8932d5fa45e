import { catalogue, type FindingCode } from './catalogue';
import type { Slots } from './finding';

/** The sentence of a finding with its blanks filled; a blank without a word stays visible. */
export const sentence = (code: FindingCode, slots: Slots): string =>
  catalogue[code].sentence.replace(/\{(\w+)\}/g, (blank: string, name: string) => `${slots[name] ?? blank}`);
