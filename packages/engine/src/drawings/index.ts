export * from './palette.ts';
export * from './marks.ts';
export * from './promise-scale.ts';
export * from './part-numbers.ts';
export * from './balloon.ts';
export { pressureLine, type PressureLineOptions } from './pressure-line.ts';
export * from './curves/index.ts';
export { throwScene } from './throw-scene.ts';
export type { ThrowSceneOptions } from './scene-options.ts';
