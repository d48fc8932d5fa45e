/** Addresses in a file that can be followed: included files and pictures of pages. */
import type { DocumentLink } from 'vscode-languageserver-types';
import { stretchIn } from '../../grammar/place';
import { clausesOf, firstOf } from '../../grammar/statements/read';
import type { Argument, Statement } from '../../grammar/tree';
import type { Project } from '../workspace/project';
import { rangeOfOffsets } from './place';

type Text = Extract<Argument, { kind: 'word' | 'string' }>;

const linked: Readonly<
  Record<string, { readonly tooltip: string; readonly path: (statement: Statement) => Text | undefined }>
> = {
  include: { tooltip: 'Open the included file', path: ({ args }) => firstOf(args, 'string') },
  page: {
    tooltip: 'Open the picture of the page',
    path: (statement) => clausesOf(statement, 'image').flatMap(({ args }) => firstOf(args, 'string') ?? [])[0],
  },
};

/** @param resolve the address that a path in the file means; undefined where it leads out of the work */
export function documentLinks({ tree }: Project, resolve: (path: string) => string | undefined): DocumentLink[] {
  return tree.blocks.flatMap((block) =>
    block.statements.flatMap((placed) => {
      const { statement } = placed.tree;
      const link = linked[statement.keyword];
      const path = link?.path(statement);
      const target = path === undefined ? undefined : resolve(path.text);
      if (link === undefined || path === undefined || target === undefined) return [];
      const { start, end } = stretchIn(block, placed, path);
      return [{ range: rangeOfOffsets(tree, start, end), target, tooltip: link.tooltip }];
    }),
  );
}
