/**
 * The names that the built-in sign tables give to shapes. What the tables say about playing them stands elsewhere.
 *
 * A name is another spelling of its shapes: `'pince` under the table of 1689 is the comma after the note. Names are the
 * tables' own, small letters without accents joined by `_`; a second entry called "Autre" bears the first one's name with
 * `_autre`. Where only a modern description is known, the name is in English. What a table explains without a sign of its
 * own, such as small notes, curves over several notes and an accidental beside a sign, has no row.
 */

/**
 * How sure it is that the table names this sign so: `confirmed` by a text that states it; from `memory` and to be
 * defended; `likely`; `doubtful`, for lack of a facsimile.
 */
export type NameStatus = 'confirmed' | 'memory' | 'likely' | 'doubtful';

export interface SignName {
  readonly name: string;
  /** Short names of the shapes: one, or a set typed together. */
  readonly shapes: readonly string[];
  /** The name as the table prints it, or the modern description. */
  readonly label: string;
  readonly status: NameStatus;
  /** What must be known of a sign that the book itself does not show. */
  readonly note?: string;
}

export interface SignTableNames {
  /** The table's name: author and year. */
  readonly table: string;
  readonly title: string;
  /** The table whose names it takes over. */
  readonly from?: string;
  readonly rows: readonly SignName[];
}

const row = (name: string, shapes: readonly string[], label: string, status: NameStatus, note?: string): SignName => ({
  name,
  shapes,
  label,
  status,
  ...(note === undefined ? {} : { note }),
});

const letterCameLater = 'The book draws no sign; the letter came into use later.';
const letterBorrowed = 'The book is not known to draw a sign; the letter is borrowed from later sources.';
const lettersCommon = "The letters are common practice; the book's own sign is not recorded.";
const zigzagCommon = "The zigzag is common practice; the book's own sign is not recorded.";

/** Every built-in table, by year. */
export const signTables: readonly SignTableNames[] = [
  {
    table: 'santa-maria-1565',
    title: 'Santa María, 1565',
    rows: [
      row('quiebro', ['t'], 'Quiebro', 'doubtful', letterBorrowed),
      row('quiebro_reiterado', ['t'], 'Quiebro reiterado', 'doubtful', letterBorrowed),
      row('quiebro_senzillo', ['t'], 'Quiebro senzillo', 'doubtful', letterBorrowed),
      row('redoble', ['r'], 'Redoble', 'doubtful', letterBorrowed),
    ],
  },
  {
    table: 'english-strokes',
    title: 'The strokes of English virginal music, about 1570 to 1650',
    rows: [
      row('single_stroke', ['s'], 'Single stroke', 'memory'),
      row('double_stroke', ['ss'], 'Double stroke', 'memory'),
    ],
  },
  {
    table: 'diruta-1593',
    title: 'Diruta, Il Transilvano, 1593',
    rows: [
      row('tremolo', ['t'], 'Tremolo', 'memory', letterCameLater),
      row('tremoletto', ['t'], 'Tremoletto', 'memory', letterCameLater),
    ],
  },
  {
    table: 'correa-1626',
    title: 'Correa, 1626',
    rows: [
      row('quiebro_senzillo', ['t'], 'Quiebro senzillo', 'doubtful', letterBorrowed),
      row('quiebro_reiterado', ['t'], 'Quiebro reiterado', 'doubtful', letterBorrowed),
      row('redoble_senzillo', ['r'], 'Redoble senzillo', 'likely'),
      row('redoble_reiterado', ['r'], 'Redoble reiterado', 'likely'),
    ],
  },
  {
    table: 'chambonnieres-1670',
    title: 'Chambonnières, Pièces de clavessin, 1670',
    rows: [
      row('cadence', ['zz'], 'Cadence', 'memory'),
      row('pincement', ['zs'], 'Pincement', 'likely'),
      row('double_cadence', ['turn'], 'Double cadence', 'confirmed'),
      row('port_de_voix', ['plus'], 'Port de voix', 'likely'),
      row('coule', ['stu'], 'Coulé', 'memory'),
      row('harpegement', ['arpu'], 'Harpègement', 'likely'),
      row('harpegement_autre', ['arpd'], 'Harpègement, autre', 'likely'),
    ],
  },
  {
    table: 'anglebert-1689',
    title: "J.-H. d'Anglebert, Pièces de clavecin, Paris 1689",
    rows: [
      row('tremblement_simple', ['zz'], 'Tremblement simple', 'memory'),
      row('tremblement_appuye', ['zl'], 'Tremblement appuyé', 'memory'),
      row('cadence', ['zhb'], 'Cadence', 'likely'),
      row('cadence_autre', ['zha'], 'Cadence, autre', 'likely'),
      row('double_cadence', ['tzb'], 'Double cadence', 'likely'),
      row('double_cadence_autre', ['tza'], 'Double cadence, autre', 'doubtful'),
      row('double_cadence_sans_tremblement', ['turn'], 'Double cadence sans tremblement', 'confirmed'),
      row('double_cadence_sur_une_tierce', ['turn'], 'Double cadence sur une tierce', 'doubtful'),
      row('pince', ['ca'], 'Pincé', 'memory'),
      row('pince_autre', ['lca'], 'Pincé, autre', 'likely'),
      row('tremblement_et_pince', ['zc'], 'Tremblement et pincé', 'confirmed'),
      row('cheute', ['cb'], 'Cheute ou port de voix', 'memory'),
      row('port_de_voix', ['cb'], 'Cheute ou port de voix', 'memory'),
      row('cheute_et_pince', ['cb', 'ca'], 'Cheute et pincé', 'memory'),
      row('coule_sur_une_tierce', ['tcb'], 'Coulé sur une tierce', 'confirmed'),
      row('coule_sur_une_tierce_autre', ['tca'], 'Coulé sur une tierce, autre', 'confirmed'),
      row('coule_sur_2_notes_de_suite', ['cj'], 'Coulé sur 2 notes de suite', 'confirmed'),
      row('arpege', ['scu'], 'Arpégé', 'memory'),
      row('arpege_autre', ['scd'], 'Arpégé, autre', 'memory'),
      row('cheute_sur_une_notte', ['hc'], 'Cheute sur une notte', 'likely'),
      row('cheute_sur_2_nottes', ['hc'], 'Cheute sur 2 nottes', 'likely'),
      row('double_cheute_a_une_tierce', ['ccb'], 'Double cheute à une tierce', 'likely'),
      row('double_cheute_a_une_notte_seule', ['ccb'], 'Double cheute à une notte seule', 'likely'),
      row('detache_avant_un_tremblement', ['dash'], 'Détaché avant un tremblement', 'confirmed'),
      row('detache_avant_un_pince', ['dash'], 'Détaché avant un pincé', 'confirmed'),
    ],
  },
  {
    table: 'muffat-1690',
    title: 'Georg Muffat, Apparatus musico-organisticus, 1690',
    rows: [
      row('trill', ['t'], 'Trill', 'doubtful'),
      row('trill_with_suffix', ['tw'], 'Trill with suffix', 'doubtful'),
      row('mordent', ['zs'], 'Mordent', 'doubtful'),
    ],
  },
  {
    table: 'purcell-1696',
    title: 'Purcell, A Choice Collection of Lessons, 1696',
    rows: [
      row('shake', ['ss'], 'Shake', 'likely'),
      row('beat', ['zz'], 'Beat', 'likely'),
      row('plain_note_and_shake', ['sbd', 'ss'], 'Plain note and shake', 'likely'),
      row('fore_fall', ['sbu'], 'Fore-fall', 'likely'),
      row('back_fall', ['sbd'], 'Back-fall', 'likely'),
      row('mark_for_the_turn', ['turn'], 'Mark for the turn', 'likely'),
      row('shake_turned', ['ss', 'turn'], 'Shake turned', 'likely'),
      row('slur', ['cj'], 'Slur', 'likely'),
      row('battery', ['arp'], 'Battery', 'likely'),
    ],
  },
  {
    table: 'le-roux-1705',
    title: 'Le Roux, 1705',
    // Its "séparez" has no row: how that sign looks is not recorded.
    from: 'anglebert-1689',
    rows: [],
  },
  {
    table: 'couperin-1713',
    title: 'François Couperin, Pièces de clavecin I, 1713',
    rows: [
      row('pince', ['zs'], 'Pincé', 'memory'),
      row('pince_simple', ['zs'], 'Pincé simple', 'memory'),
      row('pince_double', ['zzs'], 'Pincé double', 'memory'),
      row('pince_continu', ['wls'], 'Pincé continu', 'memory'),
      row('tremblement_appuye_et_lie', ['zz'], 'Tremblement appuyé et lié', 'memory'),
      row('tremblement_ouvert', ['zz'], 'Tremblement ouvert', 'likely'),
      row('tremblement_ferme', ['zz'], 'Tremblement fermé', 'likely'),
      row('tremblement_lie_sans_etre_appuye', ['zz'], 'Tremblement lié sans être appuyé', 'likely'),
      row('tremblement_detache', ['zz'], 'Tremblement détaché', 'memory'),
      row('tremblement_continu', ['wl'], 'Tremblement continu', 'memory'),
      row('trill_with_turn_above', ['zz', 'turn'], 'Trill with a turn sign above', 'confirmed'),
      row('accent', ['sa'], 'Accent', 'memory'),
      row('arpegement_en_montant', ['arpu'], 'Arpègement, en montant', 'memory'),
      row('arpegement_en_descendant', ['arpd'], 'Arpègement, en descendant', 'memory'),
      row('tierce_coulee_en_montant', ['stu'], 'Tierce coulée, en montant', 'memory'),
      row('tierce_coulee_en_descendant', ['std'], 'Tierce coulée, en descendant', 'memory'),
      row('aspiration', ['wedge'], 'Aspiration', 'confirmed'),
      row('suspension', ['archs'], 'Suspension', 'confirmed'),
      row('double', ['turn'], 'Doublé', 'memory'),
      row('unisson', ['link'], 'Unisson', 'likely'),
    ],
  },
  {
    table: 'rameau-1724',
    title: 'Rameau, Pièces de clavessin, 1724',
    rows: [
      row('cadence', ['zzz'], 'Cadence', 'memory'),
      row('cadence_appuyee', ['zl'], 'Cadence appuyée', 'memory'),
      row('double_cadence', ['zr'], 'Double cadence', 'confirmed'),
      row('double', ['turn'], 'Doublé', 'confirmed'),
      row('pince', ['ca'], 'Pincé', 'memory'),
      row('port_de_voix', ['cb'], 'Port de voix', 'memory'),
      row('coulez', ['cb'], 'Coulez', 'memory'),
      row('pince_et_port_de_voix', ['cb', 'ca'], 'Pincé et port de voix', 'memory'),
      row('son_coupe', ['dash'], 'Son coupé', 'memory'),
      row('suspension', ['arch'], 'Suspension', 'memory'),
      row('arpegement_simple', ['scu'], 'Arpègement simple', 'memory'),
      row('arpegement_figure', ['scs'], 'Arpègement figuré', 'memory'),
    ],
  },
  {
    table: 'dandrieu-1724',
    title: 'Dandrieu, 1724',
    rows: [
      row('trill_with_suffix', ['zr'], 'Trill with two-note suffix', 'confirmed'),
      row('port_de_voix_and_mordent', ['azs'], 'Port de voix followed by multiple mordent', 'confirmed'),
    ],
  },
  {
    table: 'muffat-1739',
    title: 'Gottlieb Muffat, Componimenti, 1739',
    rows: [
      row('trill', ['t'], 'Trill', 'likely'),
      row('trill_from_below', ['zu'], 'Trill from below', 'likely'),
      row('trill_from_below_with_suffix', ['zur'], 'Trill from below with suffix', 'likely'),
    ],
  },
  {
    table: 'quantz-1752',
    title: 'Quantz, Versuch, 1752',
    rows: [row('trill', ['tr'], 'Trill', 'likely', lettersCommon)],
  },
  {
    table: 'marpurg-1755',
    title: 'Marpurg, 1755',
    rows: [
      row('trill', ['tr'], 'Trill', 'likely', lettersCommon),
      row('slide_trill_with_suffix', ['zhbr'], 'Slide-trill with one-note suffix', 'confirmed'),
    ],
  },
  {
    table: 'turk-1789',
    title: 'D. G. Türk, Klavierschule, 1789',
    rows: [row('trill', ['tr'], 'Trill', 'likely', lettersCommon)],
  },
  {
    table: 'clementi-1801',
    title: 'Clementi, 1801',
    rows: [
      row('shake', ['tr'], 'Shake', 'likely', lettersCommon),
      row('short_shake', ['zz'], 'Short shake', 'doubtful', zigzagCommon),
    ],
  },
];

const byTable: ReadonlyMap<string, SignTableNames> = new Map(signTables.map((each) => [each.table, each]));

/** The names of a built-in table; undefined where there is no such table. */
export const signTableByName = (table: string): SignTableNames | undefined => byTable.get(table);

/** A table's own rows, then those of the table it takes over that it does not name itself. */
export function rowsWithInherited(table: SignTableNames): readonly SignName[] {
  const base = table.from === undefined ? undefined : byTable.get(table.from);
  if (base === undefined) return table.rows;
  const own = new Set(table.rows.map((each) => each.name));
  return [...table.rows, ...rowsWithInherited(base).filter((each) => !own.has(each.name))];
}

/** What one table means by a name. */
export interface NamedShapes {
  readonly table: string;
  readonly shapes: readonly string[];
}

function collectNames(): ReadonlyMap<string, readonly NamedShapes[]> {
  const names = new Map<string, NamedShapes[]>();
  for (const table of signTables) {
    for (const { name, shapes } of rowsWithInherited(table)) {
      const uses = names.get(name) ?? [];
      uses.push({ table: table.table, shapes });
      names.set(name, uses);
    }
  }
  return names;
}

const byRowName = collectNames();

/** The tables that have a row of this name, by year, with the shapes each means; empty where none has. */
export const namesOf = (name: string): readonly NamedShapes[] => byRowName.get(name) ?? [];
