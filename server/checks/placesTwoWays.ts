/** Places that are decided together, of which a reading says two things. */
import { allOf, clausesOf } from '../../grammar/statements/read';
import type { NamePart } from '../../grammar/tree';
import { linkedPlaces } from '../readings/places';
import type { PlacedProblem } from '../score/score';
import { check, problemAt } from './check';

export const placesTwoWays = check('places-two-ways', ['environment'], ({ environment }) => {
  const groupOf = linkedPlaces(environment);
  return environment.statements.flatMap(({ statement, declared }): PlacedProblem[] => {
    if (statement.keyword !== 'reading' || declared.file !== undefined) return [];
    const said = new Map<string, { readonly place: NamePart; readonly label: string }>();
    return clausesOf(statement, 'at').flatMap((clause) => {
      const [place, label] = allOf(clause.args, 'name');
      const group = place && groupOf.get(place.text);
      if (place === undefined || label === undefined || group === undefined) return [];
      const before = said.get(group);
      if (before === undefined) said.set(group, { place, label: label.text });
      if (before === undefined || before.label === label.text || before.place.text === place.text) return [];
      const { block, statement: index } = declared;
      const slots = { place: place.text, label: label.text, other: before.place.text, taken: before.label };
      return [problemAt('place-two-ways', { pos: clause.pos, len: clause.len, block, statement: index }, slots)];
    });
  });
});
