import preact from "@preact/preset-vite";
import { defineConfig } from "vite";

export default defineConfig({
  base: "./",
  logLevel: "error",
  plugins: [preact()],
  worker: { format: "es" },
  build: {
    target: "es2022",
    outDir: "../src/longpoint/serve/app",
    emptyOutDir: true,
    rollupOptions: {
      input: { app: "index.html", sw: "src/service/sw.ts" },
      output: {
        entryFileNames: (chunk) => (chunk.name === "sw" ? "sw.js" : "assets/[name]-[hash].js"),
      },
    },
  },
});
