/** A quick annotation made a full one, with a name that other places can cite. */
import { CodeActionKind } from 'vscode-languageserver-types';
import { annotationSaying } from '../annotating';
import { stretchOf } from '../nodes';
import { innermost, type Offer } from './refactoring';

export const fullNote: Offer = ({ project, here, path }) => {
  const annotation = innermost(path, 'annotation')?.annotation;
  if (annotation?.text === undefined) return undefined;
  const { name, changes } = annotationSaying(project, { text: annotation.text });
  const { start, end } = stretchOf(here, annotation);
  return {
    title: `Make a full annotation, ${name}`,
    kind: CodeActionKind.RefactorExtract,
    changes: [...changes, { offset: start, length: end - start, text: `*${name}` }],
  };
};
