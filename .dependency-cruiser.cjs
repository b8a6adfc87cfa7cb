/** Who may import whom. One row a layer; everything that is not listed is forbidden. */
const layers = {
  'src/core': [],
  'src/journal': ['src/core'],
  grammar: [],
  'src/language': ['grammar', 'src/journal', 'src/core'],
  'src/science': ['src/core'],
  'src/state': ['src/journal', 'src/core', 'src/science'],
  'src/checks': ['src/state', 'src/journal', 'src/core', 'src/science'],
  'src/questions': ['src/checks', 'src/state', 'src/journal', 'src/core', 'src/science'],
  'src/reports': ['src/questions', 'src/core', 'src/journal'],
  'src/files': ['src/core'],
};

/** npm packages and the layers that may use them. */
const packages = {
  chevrotain: ['grammar'],
  'simple-statistics': ['src/core'],
  jstat: ['src/core'],
  'ml-matrix': ['src/science'],
  'ml-levenberg-marquardt': ['src/science'],
  yalps: ['src/science'],
  luxon: ['src/cli'],
  commander: ['src/cli'],
  chalk: ['src/reports'],
  'cli-table3': ['src/reports'],
  'string-width': ['src/reports'],
  'csv-stringify': ['src/reports'],
  'csv-parse': ['src/cli'],
};

const own = '^(src|grammar)/';
const within = (folder) => `^${folder}/`;

module.exports = {
  forbidden: [
    {
      name: 'no-cycles',
      comment: 'A cycle hides which layer is the lower one.',
      severity: 'error',
      from: { path: own },
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    ...Object.entries(layers).map(([layer, allowed]) => ({
      name: `${layer.replace('src/', '')}-stays-in-its-layer`,
      severity: 'error',
      from: { path: within(layer) },
      to: { path: own, pathNot: [layer, ...allowed].map(within) },
    })),
    {
      name: 'only-the-edges-touch-the-machine',
      severity: 'error',
      from: { path: own, pathNot: ['^src/cli/', '^src/files/'] },
      to: { dependencyTypes: ['core'] },
    },
    ...Object.entries(packages).map(([name, users]) => ({
      name: `${name}-has-its-place`,
      severity: 'error',
      from: { path: own, pathNot: users.map(within) },
      to: { path: `node_modules/${name}/` },
    })),
    {
      name: 'reports-see-rows-only',
      comment: 'Types of rows, never the code that makes them.',
      severity: 'error',
      from: { path: '^src/reports/' },
      to: { path: '^src/questions/', dependencyTypesNot: ['type-only'] },
    },
    { name: 'only-tests-use-tests', severity: 'error', from: { path: own }, to: { path: '^tests/' } },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      extensions: ['.ts', '.js', '.cjs', '.mjs'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
};
