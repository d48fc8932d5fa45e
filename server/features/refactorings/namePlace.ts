/** A place where sources differ given a name, so that readings and links can cite it. */
import { CodeActionKind } from 'vscode-languageserver-types';
import { usesIn } from '../../checks/uses';
import { freeName } from '../annotating';
import { stretchOf } from '../nodes';
import { type Offer, put } from './refactoring';

export const namePlace: Offer = ({ project, here, path }) => {
  const options = path
    .flatMap((node) => (node.what === 'item' && node.item.kind === 'options' ? [node.item] : []))
    .at(-1);
  if (options === undefined || options.place !== undefined || options.reasons.length > 0) return undefined;
  const name = freeName('v', usesIn(project.tree).places);
  return {
    title: `Name this place ${name}`,
    kind: CodeActionKind.RefactorRewrite,
    changes: [put(stretchOf(here, options).start + '<'.length, `${name} `)],
  };
};
