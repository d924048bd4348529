namespace Flushback.Reports.Tests.Browser;

/// <summary>Questions asked of an open page, as JavaScript that runs in it and answers with what is wrong.</summary>
internal static class Probes
{
    /// <summary>How wide the page is when nothing is cut off, in pixels.</summary>
    public const string Width = "document.documentElement.scrollWidth";

    /// <summary>Every element with words of its own must lie between the left and the right edge of the window.</summary>
    public const string OutsideTheirPlace = """
        [...document.querySelectorAll('body *')]
            .filter(e => !e.closest('svg') && !e.closest('thead') && [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()))
            .filter(e => { const r = e.getBoundingClientRect(); return r.left < 0 || r.right > innerWidth + 0.5; })
            .map(e => e.textContent.trim())
        """;

    /// <summary>Words in a picture that reach beyond its edge.</summary>
    public const string CutInPictures = """
        [...document.querySelectorAll('svg text')]
            .filter(t => t.getBoundingClientRect().width > 0)
            .filter(t => {
                const word = t.getBoundingClientRect(), sheet = t.closest('svg').getBoundingClientRect();
                return word.left < sheet.left || word.right > sheet.right || word.top < sheet.top || word.bottom > sheet.bottom;
            })
            .map(t => t.closest('svg').id + ': ' + t.textContent)
        """;

    /// <summary>Words of a chart that lie on each other, less half a pixel all round: boxes that only touch do not overlap.</summary>
    public const string OverlapsInCharts = """
        [...document.querySelectorAll('.charts svg')].flatMap(sheet => {
            const words = [...sheet.querySelectorAll('text')].map(t => [t.textContent, t.getBoundingClientRect()]);
            return words.flatMap(([one, a], i) => words.slice(i + 1)
                .filter(([, b]) => a.left < b.right - 0.5 && b.left < a.right - 0.5 && a.top < b.bottom - 0.5 && b.top < a.bottom - 0.5)
                .map(([other]) => `${sheet.id}: ${one} / ${other}`));
        })
        """;

    /// <summary>Contrast as in WCAG 2: (L1 + 0.05) / (L2 + 0.05) of relative luminances; 4.5 for running text.</summary>
    public const string FaintWords = """
        (() => {
            const channels = c => c.match(/[\d.]+/g).map(Number);
            const linear = v => (v /= 255) <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
            const luminance = ([r, g, b]) => 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
            const ground = e => {
                for (; e; e = e.parentElement) {
                    const c = channels(getComputedStyle(e).backgroundColor);
                    if (c.length < 4 || c[3] > 0) return c;
                }
                return [255, 255, 255];
            };
            return [...document.querySelectorAll('body *')]
                .filter(e => !e.closest('svg') && [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()))
                .filter(e => {
                    const a = luminance(channels(getComputedStyle(e).color)), b = luminance(ground(e));
                    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05) < 4.5;
                })
                .map(e => e.className + ': ' + e.textContent.trim());
        })()
        """;
}
