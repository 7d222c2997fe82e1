/** The rules of the house (DEVELOPERS.md). tests/unit/house/dependency-rules.test.ts asserts that a run saw modules. */
const node =
  '^(node:)?(assert|buffer|child_process|cluster|crypto|dgram|dns|events|fs|http|http2|https|inspector|module|net|os|path|perf_hooks|process|readline|stream|timers|tls|tty|url|util|v8|vm|worker_threads|zlib)(/|$)';
const pure = '^main/(document|heat|planning|work-map)/';

module.exports = {
  forbidden: [
    {
      name: 'no-cycles',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'no-orphans',
      severity: 'error',
      from: { orphan: true, path: '^(main|renderer|shared-types)/', pathNot: '\\.d\\.ts$' },
      to: {},
    },
    {
      name: 'ground-floor',
      comment: 'shared-types imports itself, zod and the pure libraries its rules need',
      severity: 'error',
      from: { path: '^shared-types/' },
      to: { pathNot: '^(shared-types/|node_modules/(zod|immer|ml-matrix|flatbush)/)' },
    },
    {
      name: 'window-asks',
      comment: 'the window imports shared-types only; the rest it asks of main',
      severity: 'error',
      from: { path: '^renderer/' },
      to: { path: '^main/' },
    },
    {
      name: 'window-no-node',
      severity: 'error',
      from: { path: '^renderer/' },
      to: { path: `${node}|^electron$|node_modules/electron/` },
    },
    { name: 'main-no-window', severity: 'error', from: { path: '^main/' }, to: { path: '^renderer/' } },
    {
      name: 'electron-in-its-shell',
      severity: 'error',
      from: { pathNot: '^main/(shells/electron/|electron-app\\.ts)' },
      to: { path: '^electron$|node_modules/electron/' },
    },
    {
      name: 'settings-store-in-settings',
      severity: 'error',
      from: { pathNot: '^main/settings/' },
      to: { path: 'node_modules/(electron-store|conf)/' },
    },
    {
      name: 'network-in-local-shell',
      severity: 'error',
      from: { path: '^(main|renderer|shared-types)/', pathNot: '^main/shells/local/' },
      to: { path: '^(node:)?https?$|node_modules/ws/' },
    },
    {
      name: 'files-in-files',
      severity: 'error',
      from: {
        path: '^main/',
        pathNot: '^main/(files|settings|shells)/|^main/(electron-app|local-app|command-line)\\.ts',
      },
      to: { path: '^(node:)?fs(/promises)?$' },
    },
    {
      name: 'pure-rooms',
      comment: 'document, heat, planning and work-map use no Node core',
      severity: 'error',
      from: { path: pure },
      to: { path: node },
    },
    {
      name: 'numerics-alone',
      severity: 'error',
      from: { path: '^main/heat/numerics/' },
      to: { pathNot: '^main/heat/numerics/' },
    },
    {
      name: 'shells-apart',
      severity: 'error',
      from: { path: '^main/shells/([^/]+)/' },
      to: { path: '^main/shells/([^/]+)/', pathNot: '^main/shells/$1/' },
    },
    {
      name: 'pixi-in-canvas',
      severity: 'error',
      from: { pathNot: '^renderer/canvas/' },
      to: { path: 'node_modules/(pixi\\.js|@pixi)/' },
    },
    {
      name: 'editing-pure',
      severity: 'error',
      from: { path: '^renderer/editing/' },
      to: { pathNot: '^(renderer/editing/|shared-types/|renderer/state/canvas-model\\.ts|node_modules/immer/)' },
    },
    { name: 'nothing-unresolved', severity: 'error', from: {}, to: { couldNotResolve: true, pathNot: '\\?' } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
      extensions: ['.ts', '.tsx', '.js', '.mjs', '.cjs', '.json', '.css'],
    },
  },
};
