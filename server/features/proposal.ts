/** Something that can be typed, before it is a completion of the protocol. */
import { CompletionItemKind } from 'vscode-languageserver-types';
import { instrumentTypes } from '../../grammar/vocabulary/instruments';
import { temperaments } from '../../grammar/vocabulary/temperaments';
import { usesIn } from '../checks/uses';
import type { DeclaredNames } from '../score/environment';
import { declaredNames } from '../score/environment';
import { builtInTables } from '../signs/tables';
import type { Project } from '../workspace/project';
import { namesIn, type Space } from './names';
import { nameInWords } from './nameWords';

export interface Proposal {
  readonly label: string;
  readonly kind: CompletionItemKind;
  /** So many signs before the caret are what it is typed for. */
  readonly replaces: number;
  readonly detail?: string | undefined;
  /** Markdown. */
  readonly documentation?: string | undefined;
  /** What is typed, where that is more than the label. */
  readonly insert?: string;
  readonly isSnippet?: boolean;
  readonly filter?: string;
  /** It is what is meant as a rule. */
  readonly isFirst?: boolean;
  /** The name of a sign, of which more can be told. */
  readonly sign?: string;
}

export const KINDS = CompletionItemKind;

/** Words of a list with what each means. */
export const described = (
  words: Readonly<Record<string, { readonly describe: string } | string>>,
  replaces: number,
  kind: CompletionItemKind = KINDS.Keyword,
): Proposal[] =>
  Object.entries(words).map(([label, entry]) => ({
    label,
    kind,
    replaces,
    documentation: typeof entry === 'string' ? entry : entry.describe,
  }));

const spaceKinds: Readonly<Record<Space, CompletionItemKind>> = {
  stave: KINDS.Class,
  voice: KINDS.Field,
  label: KINDS.EnumMember,
  place: KINDS.Reference,
  note: KINDS.Text,
  editor: KINDS.Variable,
  table: KINDS.Struct,
  temperament: KINDS.Struct,
  section: KINDS.Module,
  instrument: KINDS.Unit,
  manual: KINDS.Property,
  shape: KINDS.Event,
};

/** Names of a space, each with what it stands for. */
export const namesOf = (project: Project, space: Space, names: Iterable<string>, replaces: number): Proposal[] =>
  [...new Set(names)].map((label) => ({
    label,
    kind: spaceKinds[space],
    replaces,
    documentation: nameInWords(project, { space, name: label }).join('\n\n'),
  }));

/** Sources, layers and readings: whatever an option or a limit can name. */
export function labels({ environment }: Project): readonly string[] {
  const { witnesses, layers, readings }: DeclaredNames = declaredNames(environment);
  return [...witnesses, ...layers, ...readings];
}

const known: Readonly<Record<Space, (project: Project) => Iterable<string>>> = {
  stave: ({ environment }) => declaredNames(environment).staves,
  voice: ({ environment }) => declaredNames(environment).voices,
  label: labels,
  place: ({ tree }) => usesIn(tree).places,
  note: ({ environment }) => declaredNames(environment).notes,
  editor: ({ environment }) => declaredNames(environment).editors,
  table: ({ environment }) => [...declaredNames(environment).tables, ...builtInTables],
  temperament: (project) => [...given(project, 'temperament'), ...temperaments.map(({ name }) => name)],
  section: ({ tree }) => usesIn(tree).sections,
  instrument: () => instrumentTypes.map(({ name }) => name),
  manual: (project) => given(project, 'manual'),
  shape: () => [],
};

const given = (project: Project, space: Space): string[] =>
  [project, ...project.included].flatMap((named) =>
    namesIn(named).flatMap((one) => (one.given && one.space === space ? [one.name] : [])),
  );

/** All names of a space that can be cited. */
export const knownNames = (project: Project, space: Space, replaces: number): Proposal[] =>
  namesOf(project, space, known[space](project), replaces);
