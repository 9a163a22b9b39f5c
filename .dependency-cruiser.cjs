// The direction of imports (docs/design.md, section 4): app, bin -> db -> lib -> shared.
const from = (path, to, name, comment) => ({
  name,
  comment,
  severity: 'error',
  from: { path },
  to: { path: to },
});

module.exports = {
  forbidden: [
    from('^shared/', '^(lib|db|app|bin|tests)/', 'shared-knows-nobody', 'shared is the floor'),
    from('^lib/', '^(db|app|bin|tests)/', 'lib-is-pure', 'lib knows shared and itself only'),
    from('^db/', '^(app|bin|tests)/', 'db-below-doors', 'db never imports a door'),
    from('^app/', '^(bin|tests)/', 'app-not-bin', 'two doors do not know each other'),
    // bin/entries-door.ts runs one route where the page server would: it loads it by its place, which is not seen here.
    from('^bin/', '^(app|tests)/', 'bin-not-app', 'two doors do not know each other'),
    from('^lib/limits/', '^lib/(judge|fold|sheet|science|between)/', 'limits-below-judge', 'limits are data'),
    from(
      '^lib/science/',
      '^lib/(judge|fold|sheet|between)/',
      'science-below-judge',
      'science decides nothing',
    ),
    from(
      '^lib/(judge|fold|sheet)/',
      '^lib/between/',
      'no-verdict-from-between',
      'what is worked out between two looks reaches no verdict, no fold and no sheet',
    ),
    from(
      '^lib/(judge|fold)/',
      '^lib/science/',
      'judge-without-science',
      'a verdict rests on looks and limits, never on a forecast',
    ),
    from('^lib/between/', '^lib/sheet/', 'between-below-sheet', 'it works on runs'),
    from(
      '^lib/judge/',
      '^lib/(fold|sheet)/',
      'judge-below-fold',
      'the judge sees one record, never the book',
    ),
    from('^lib/fold/', '^lib/sheet/', 'fold-below-sheet', 'the sheet is printed from the fold'),
    {
      name: 'lib-does-no-io',
      comment: 'lib has no input, no output and no React',
      severity: 'error',
      from: { path: '^(lib|shared)/', pathNot: '^lib/sheet/pdf/' },
      to: {
        path: '^(node:)?(fs|net|http|https|child_process|worker_threads)$|node_modules/(react|react-dom|next|postgres|drizzle-orm)/',
      },
    },
    {
      name: 'round-without-charts',
      comment: 'a phone loads the round before its first tap: no chart and no sum between two looks is in it',
      severity: 'error',
      from: { path: '^app/round/(page|Round)\\.tsx$' },
      to: { path: 'node_modules/@visx/|^lib/(science|between)/', reachable: true },
    },
    {
      name: 'no-circles',
      comment: 'types may name each other; code may not',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^(\\.next|data|node_modules)/' },
    parser: 'swc', // the compiler's own interface is not published in TypeScript 7
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.json'],
      conditionNames: ['import', 'require', 'node', 'default'],
    },
  },
};
