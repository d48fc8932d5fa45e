import type { SignTable } from './table';

/** Its own “séparez” has no row: how that sign looks is not recorded. */
export const leRoux1705: SignTable = {
  table: 'le-roux-1705',
  title: 'Le Roux, 1705',
  from: 'anglebert-1689',
  missing: '“Séparez”, two notes struck apart, the lower first, has no row: how its sign looks is not recorded.',
  rows: [],
};
