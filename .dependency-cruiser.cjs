// The layer matrix: a layer may import only the layers named for it, and only through their index.ts.
const ENGINE = ['quantity', 'physics', 'liquids', 'hydraulics', 'catalogue', 'rig', 'yard', 'drawings'];
const APP = {
  plumbing: [],
  documents: ['calc', 'plumbing'],
  store: [],
  server: ['documents', 'store'],
  web: ['calc', 'plumbing'],
  calc: [],
  cli: ['documents', 'store', 'server', 'calc', 'plumbing'],
};
const engineSrc = '^packages/engine/src/';
const appSrc = '^packages/app/src/';
const tests = '\\.(test|soak)\\.tsx?$';

const upward = ENGINE.flatMap((layer, i) => {
  const higher = ENGINE.slice(i + 1);
  return higher.length === 0
    ? []
    : [
        {
          name: `engine-${layer}-looks-down`,
          severity: 'error',
          from: { path: `${engineSrc}${layer}/`, pathNot: tests },
          to: { path: `${engineSrc}(${higher.join('|')})/` },
        },
      ];
});
const faces = ENGINE.map((layer) => ({
  name: `engine-${layer}-entered-by-index`,
  severity: 'error',
  from: { path: engineSrc, pathNot: [`${engineSrc}${layer}/`, tests] },
  to: { path: `${engineSrc}${layer}/`, pathNot: `${engineSrc}${layer}/index\\.ts$` },
}));
const appLayers = Object.entries(APP).map(([layer, allowed]) => ({
  name: `app-${layer}-may-import`,
  severity: 'error',
  from: { path: `${appSrc}${layer}/`, pathNot: tests },
  to: { path: appSrc, pathNot: [layer, ...allowed].map((l) => `${appSrc}${l}/`) },
}));

module.exports = {
  forbidden: [
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    ...upward,
    ...faces,
    ...appLayers,
    {
      name: 'engine-is-pure',
      comment: 'The engine uses no npm package and nothing of Node.',
      severity: 'error',
      from: { path: engineSrc, pathNot: tests },
      to: {
        dependencyTypes: ['npm', 'npm-dev', 'npm-optional', 'npm-peer', 'core', 'npm-no-pkg', 'npm-unknown'],
      },
    },
    {
      name: 'engine-not-to-app',
      severity: 'error',
      from: { path: '^packages/engine/' },
      to: { path: '^packages/app/' },
    },
    {
      name: 'web-has-no-node',
      severity: 'error',
      from: { path: `${appSrc}web/`, pathNot: tests },
      to: { dependencyTypes: ['core'] },
    },
    { name: 'resolvable', severity: 'error', from: {}, to: { couldNotResolve: true } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^|/)dist/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.base.json' },
    enhancedResolveOptions: {
      conditionNames: ['source', 'import', 'node', 'default'],
      exportsFields: ['exports'],
    },
  },
};
