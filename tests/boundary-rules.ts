import type { IRegularForbiddenRuleType } from 'dependency-cruiser';

/** Who may import whom, and why. `npm run boundaries` enforces it. */
const rule = (
  name: string,
  comment: string,
  from: IRegularForbiddenRuleType['from'],
  to: IRegularForbiddenRuleType['to'],
) => ({ name, comment, severity: 'error' as const, from, to });

/** Pure corners of the controller that the simulation shares with it. */
const sharedWithSim = '^controller/(clock|site-file|site-fault|log/|links/serial/codec|engine/)';

export const forbidden = [
  rule(
    'no-circular',
    'a circle cannot be read from its beginning',
    {},
    { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
  ),
  rule('resolvable', 'what is imported must exist', {}, { couldNotResolve: true }),
  rule(
    'vocabulary-alone',
    'shared-types is the vocabulary: it knows no room, reads and writes nothing, and zod only',
    { path: '^shared-types/' },
    { pathNot: ['^shared-types/', '^node_modules/zod/'] },
  ),
  rule(
    'engine-pure',
    'the engine runs in any host: it imports shared-types and nothing else',
    { path: '^controller/engine/' },
    { pathNot: '^(controller/engine/|shared-types/)' },
  ),
  rule(
    'engine-without-library',
    'what the engine imports at run time must be free of libraries, so that it bundles to one plain file',
    { path: '^controller/engine/' },
    {
      path: '^shared-types/',
      pathNot: '^shared-types/(channels|alarm-catalogue|cautions)\\.ts$',
      dependencyTypesNot: ['type-only'],
    },
  ),
  rule(
    'controller-alone',
    'the controller needs no simulation and no monitor',
    { path: '^controller/' },
    { path: '^(sim|desktop|tests)/' },
  ),
  rule(
    'links-know-no-log',
    'a link carries readings and outputs, no more',
    { path: '^controller/links/' },
    { path: '^controller/(log|daemon)/' },
  ),
  rule(
    'log-knows-no-link',
    'the log keeps what it is given',
    { path: '^controller/log/' },
    { path: '^controller/(links|daemon)/' },
  ),
  rule(
    'plant-pure',
    'the plant has no host',
    { path: '^sim/plant/' },
    { pathNot: '^(sim/(plant|physics|weather)/|shared-types/|controller/engine/)' },
  ),
  rule(
    'textbook-alone',
    'formulas know no plant; of the engine they share what water is like',
    { path: '^sim/physics/' },
    { pathNot: '^(sim/physics/|sim/weather/sky\\.ts|controller/engine/water\\.ts)' },
  ),
  rule(
    'weather-alone',
    'the weather does not depend on what it falls on; its files are parsed by a library',
    { path: '^sim/weather/' },
    { pathNot: '^(sim/weather/|shared-types/|node_modules/(nrel-spa|csv-parse|zod)/)' },
  ),
  rule(
    'sim-not-daemon',
    'the simulation meets the controller over a broker or a serial line, never inside',
    { path: '^sim/' },
    { path: '^(controller|desktop|tests)/', pathNot: sharedWithSim },
  ),
  rule(
    'host-not-daemon',
    'the host meets the controller over the broker and reads its log',
    { path: '^desktop/(host|web|electron)/' },
    { path: '^(controller/(daemon|links|engine)|sim/(plant|weather|device)|tests)/' },
  ),
  rule(
    'electron-in-one-folder',
    'the same screens serve a browser',
    { pathNot: '^(desktop/electron|tests)/' },
    { path: '^node_modules/electron/' },
  ),
  rule(
    'screens-through-one-door',
    'screens talk to the host through MonitorApi alone',
    { path: '^desktop/ui/' },
    { path: '^(controller|sim|tests|desktop/(host|web|electron))/' },
  ),
  rule(
    'nobody-imports-tests',
    'tests look at the rooms, not the other way',
    { pathNot: '^tests/' },
    { path: '^tests/' },
  ),
];

export const options = {
  doNotFollow: { path: 'node_modules' },
  exclude: { path: '^(dist|node_modules)/' },
  tsPreCompilationDeps: true,
  tsConfig: { fileName: 'desktop/ui/tsconfig.json' },
  enhancedResolveOptions: {
    extensions: ['.ts', '.tsx', '.mjs', '.js', '.json', '.css'],
    exportsFields: ['exports'],
    conditionNames: ['import', 'require', 'node', 'default', 'types'],
  },
};
