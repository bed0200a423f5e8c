using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace GaitWatch.Acceptance;

/// <summary>What must hold of every screen: no wider than the window, large enough for gloves, readable by all.</summary>
internal static class Screen
{
    /// <summary>Checks a screen, and takes its picture for the documents where they are wanted.</summary>
    /// <param name="page">The page as it stands.</param>
    /// <param name="name">The screen's name.</param>
    /// <param name="smallest">How wide and high everything to press must be, px.</param>
    public static async Task LookAsync(IPage page, string name, int smallest)
    {
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= page.ViewportSize!.Width, $"{name} is wider than the screen");
        var small = await page.EvaluateAsync<string[]>(
            """
            smallest => [...document.querySelectorAll("a:not(.skip), button, summary, input, .zone path")]
              .filter(target => target.checkVisibility()).map(target => ({ target, box: target.getBoundingClientRect() }))
              .filter(({ target, box }) => Math.round(box.width) < smallest || Math.round(box.height) < smallest)
              .map(({ target, box }) => `${target.textContent.trim()} ${target.parentNode.dataset?.zone ?? ""}: ${box.width} x ${box.height}`)
            """,
            smallest);
        Assert.True(small.Length == 0, $"{name}: {string.Join("; ", small)}");
        // axe-core's rules for WCAG 2; that they ran at all is known from those that passed.
        var axe = await page.RunAxe();
        Assert.NotEmpty(axe.Passes);
        var faults = axe.Violations.Where(rule => rule.Impact is "serious" or "critical").Select(rule => $"{rule.Id}: {rule.Help} {string.Join("; ", rule.Nodes.Take(3).Select(node => node.Html))}").ToArray();
        Assert.True(faults.Length == 0, $"{name}: {string.Join("\n", faults)}");
        await DemoOnScreen.PictureAsync(page, name);
    }
}
