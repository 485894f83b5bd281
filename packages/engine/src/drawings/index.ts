export * from './palette.ts';
export * from './marks.ts';
export * from './promise-scale.ts';
export * from './part-numbers.ts';
export * from './balloon.ts';
export { pressureLine, type PressureLineOptions } from './pressure-line.ts';
export { throwScene, type ThrowSceneOptions } from './throw-scene.ts';
