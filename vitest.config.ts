import { defineConfig } from 'vitest/config';

const conditions = ['stillair-source', 'module', 'node', 'development|production'];

export default defineConfig({
  ssr: { resolve: { conditions } },
  resolve: { conditions },
  test: {
    include: ['packages/*/src/**/*.test.{ts,tsx}', 'tools/**/*.test.ts', 'e2e/**/*.test.ts'],
    setupFiles: ['./tools/fixed-seed.ts'],
    reporters: ['default', './ci-reporter.ts'],
    pool: 'threads',
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    expect: { poll: { timeout: 20_000 } },
    coverage: {
      provider: 'v8',
      include: ['packages/*/src/**/*.ts'],
      exclude: ['**/*.test.ts', '**/*.checks.ts', '**/*.data.ts'],
      reporter: ['text', 'lcovonly'],
    },
  },
});
