using System.Collections.Immutable;

namespace GaitWatch;

/// <summary>What reading the settings gave.</summary>
/// <param name="Settings">The settings; null when any cannot be used.</param>
/// <param name="Faults">Every setting that cannot be used.</param>
/// <param name="Notices">What works but was probably meant otherwise, a sentence each.</param>
internal sealed record SettingsResult(GaitWatchSettings? Settings, ImmutableArray<SettingFault> Faults, ImmutableArray<string> Notices);
