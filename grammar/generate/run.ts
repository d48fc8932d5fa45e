/** Every file that is generated, in whole or in part: its path from the root and how its text is made anew. */
import { withLists } from './reference';
import { textMateGrammar } from './textmate';

export interface GeneratedFile {
  readonly path: string;
  /** The new text, from the old one. */
  readonly made: (was: string) => string;
}

export const generatedFiles: readonly GeneratedFile[] = [
  { path: 'grammar/REFERENCE.md', made: withLists },
  { path: 'syntaxes/bentside.tmLanguage.json', made: textMateGrammar },
];
