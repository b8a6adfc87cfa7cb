import tseslint from 'typescript-eslint';

const edges = ['src/cli/**', 'src/files/**', 'tests/**', '*.config.*'];

export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', 'coverage/', '.stryker-tmp/', '**/*.mjs'] },
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: { allowDefaultProject: ['*.js', '*.cjs'] } } },
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/consistent-type-assertions': ['error', { assertionStyle: 'never' }],
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      eqeqeq: 'error',
      'no-control-regex': 'off',
    },
  },
  {
    // Only the edges touch the clock, the process and the terminal.
    files: ['src/**/*.ts', 'grammar/**/*.ts'],
    ignores: edges,
    rules: {
      'no-restricted-globals': [
        'error',
        ...['process', 'console', 'Date', 'Intl', 'performance', 'setTimeout'].map((name) => ({
          name,
          message: 'only src/cli and src/files touch the machine',
        })),
      ],
    },
  },
  { files: ['**/*.js', '**/*.cjs'], extends: [tseslint.configs.disableTypeChecked] },
);
