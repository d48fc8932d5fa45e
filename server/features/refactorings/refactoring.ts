/** What a refactoring is: a change of the text that says the same, or says it more fully. */
import type { CodeActionKind } from 'vscode-languageserver-types';
import type { TextChange } from '../../document/edits';
import type { Project } from '../../workspace/project';
import type { Here, Node } from '../nodes';

/** Where somebody asks for one. */
export interface Asked {
  readonly project: Project;
  readonly here: Here;
  /** All that the place lies in, the outermost first. */
  readonly path: readonly Node[];
  /** Offsets of what is selected; equal where nothing is. */
  readonly start: number;
  readonly end: number;
}

export interface Refactoring {
  readonly title: string;
  readonly kind: CodeActionKind;
  readonly changes: readonly TextChange[];
}

/** Undefined where it has no place. */
export type Offer = (asked: Asked) => Refactoring | undefined;

export const put = (offset: number, text: string): TextChange => ({ offset, length: 0, text });

/** The innermost node of a kind. */
export const innermost = <What extends Node['what']>(
  path: readonly Node[],
  what: What,
): Extract<Node, { what: What }> | undefined =>
  path.filter((node): node is Extract<Node, { what: What }> => node.what === what).at(-1);
