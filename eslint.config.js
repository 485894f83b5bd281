import js from '@eslint/js';
import globals from 'globals';
import tseslint from 'typescript-eslint';

const engineWall = [
  { name: 'Date', message: 'The engine has no clock: pass the moment in.' },
  { name: 'performance', message: 'The engine has no clock: pass the moment in.' },
  { name: 'crypto', message: 'The engine has no randomness: pass a seed in.' },
  { name: 'fetch', message: 'The engine does no input or output.' },
  { name: 'process', message: 'The engine does no input or output.' },
  { name: 'console', message: 'The engine does no input or output.' },
];

export default tseslint.config(
  {
    ignores: [
      'packages/app/vite.config.ts',
      'packages/app/vite.node.config.ts',
      '**/dist/**',
      '**/node_modules/**',
      'out/**',
      'shots/**',
      'coverage/**',
    ],
  },
  js.configs.recommended,
  {
    files: ['**/*.{js,mjs}'],
    languageOptions: { globals: globals.node },
  },
  {
    files: ['packages/**/*.{ts,tsx}'],
    extends: [tseslint.configs.recommendedTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_', destructuredArrayIgnorePattern: '^_' },
      ],
      'max-lines': ['error', { max: 400, skipBlankLines: true, skipComments: true }],
      eqeqeq: 'error',
    },
  },
  {
    files: ['packages/engine/src/**/*.ts'],
    ignores: ['**/*.test.ts', '**/*.soak.ts'],
    rules: {
      'no-restricted-globals': ['error', ...engineWall],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'The engine has no randomness: pass a seed in.' },
      ],
      'no-restricted-syntax': [
        'error',
        { selector: 'ExportDefaultDeclaration', message: 'No default exports in the engine.' },
        { selector: 'MemberExpression[property.name=/^toLocale/]', message: 'The engine has no locale.' },
      ],
    },
  },
  {
    files: ['**/*.test.ts', '**/*.test.tsx', '**/*.data.ts', '**/test/**', '**/bench/**'],
    rules: { 'max-lines': 'off' },
  },
  {
    files: ['**/*.test.ts', '**/test/**', '**/bench/**'],
    rules: {
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
    },
  },
);
