/** The measure of speed: how long a well-known tool of the same kind takes over a stylesheet of the same size. */
import {
  type CompletionList,
  getCSSLanguageService,
  type Hover,
  type Position,
  type Stylesheet,
  TextDocument,
} from 'vscode-css-languageservice';
import { Chance, numbersOf } from '../helpers/chance';

const service = getCSSLanguageService();

const nouns = ['lantern', 'harbour', 'meadow', 'kettle', 'orchard', 'pebble', 'thimble', 'willow'] as const;
const parts = ['title', 'list', 'entry', 'frame', 'label', 'corner', 'footer', 'handle'] as const;
const states = ['', '', '', ':hover', ':focus', '::before', ':first-child'] as const;
const joints = [' ', ' > ', ' + ', ', .'] as const;

const units = ['px', 'em', 'rem', '%'] as const;

/** What one declaration may say. */
const declarations: readonly [(chance: Chance) => string, ...((chance: Chance) => string)[]] = [
  (chance) => `color: #${(chance.below(4096) + 4096).toString(16).slice(1)}`,
  (chance) => `margin: ${length(chance)} ${length(chance)}`,
  (chance) => `padding: ${length(chance)}`,
  (chance) => `width: calc(100% - ${length(chance)})`,
  (chance) =>
    `border: ${chance.between(1, 4)}px solid rgba(${chance.below(256)}, ${chance.below(256)}, 0, 0.${chance.below(10)})`,
  (chance) => `font-size: ${length(chance)}`,
  (chance) => `display: ${chance.pick(['block', 'flex', 'inline-block', 'grid'])}`,
  (chance) => `background: url("${chance.pick(nouns)}-${chance.below(100)}.png") no-repeat`,
  (chance) => `transition: opacity 0.${chance.between(1, 9)}s ease-in-out`,
  (chance) => `z-index: ${chance.below(100)}`,
];

const length = (chance: Chance): string => `${chance.between(1, 40)}${chance.pick(units)}`;

function selector(chance: Chance): string {
  const simple = (): string => `${chance.pick(nouns)}-${chance.pick(parts)}${chance.pick(states)}`;
  const rest = Array.from({ length: chance.below(3) }, () => `${chance.pick(joints)}`.replace(/ $/, ' .') + simple());
  return `.${simple()}${rest.join('')}`;
}

const rule = (chance: Chance): string => {
  const lines = Array.from({ length: chance.between(2, 6) }, () => `  ${chance.pick(declarations)(chance)};\n`);
  return `${selector(chance)} {\n${lines.join('')}}\n\n`;
};

/** A stylesheet of at least so many characters: many rules of names that nobody ever used. */
export function generateStylesheet(characters: number, seed = 1): string {
  const chance = new Chance(numbersOf(seed, characters));
  let text = '';
  while (text.length < characters) text += rule(chance);
  return text;
}

export const openStylesheet = (text: string): TextDocument =>
  TextDocument.create('file:///measure.css', 'css', 1, text);

export const parseStylesheet = (document: TextDocument): Stylesheet => service.parseStylesheet(document);

/** Parse and lint; the number of findings. */
export const proofStylesheet = (document: TextDocument): number =>
  service.doValidation(document, parseStylesheet(document)).length;

/** Both of a stylesheet that is parsed already, as an editor has it. */
export const completeStylesheet = (document: TextDocument, parsed: Stylesheet, position: Position): CompletionList =>
  service.doComplete(document, position, parsed);

export const hoverStylesheet = (document: TextDocument, parsed: Stylesheet, position: Position): Hover | null =>
  service.doHover(document, position, parsed);
