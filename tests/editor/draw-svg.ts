/** Draws an SVG as a square PNG with a clear ground, since the extension gallery takes no SVG for an icon. */
import { launchBrowser } from "./editor.ts";

export const drawSvg = async (svg: string, size: number, file: string): Promise<void> => {
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: size, height: size } });
    await page.setContent(`<style>body { margin: 0 } svg { display: block; width: 100% }</style>${svg}`);
    await page.screenshot({ path: file, omitBackground: true });
  } finally {
    await browser.close();
  }
};
