const texts: readonly string[] = [
  'air, a closed valve or a dead pump',
  'the pump draws no power',
  'the pump turns in air',
  'the pump works against a closed valve or a blocked pipe',
  'the water runs backwards',
];

/** Words for one of `noFlowKinds`. */
export function noFlowKindText(kind: number): string {
  return texts[kind] ?? '';
}
