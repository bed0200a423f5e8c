using GaitWatch.Store;

namespace GaitWatch.Web;

// Events as the ICAR Animal Data Exchange standard (ADE, major version 1) writes them: member names and enumerated values from its
// public JSON schemas (github.com/adewg/ICAR, read in November 2026: icarDiagnosisEventResource, icarAttentionEventResource,
// icarDiagnosisType, icarPositionOnAnimalType, icarMetaDataType and the animal identifier schemes). The schemas allow further
// members: what the standard has no place for stands in a member of ours, as the rest of the API writes it.

/// <summary>Who an event is about.</summary>
/// <param name="Scheme"><c>std.iso.11785</c> for an ear tag; <c>gaitwatch.cow</c>, ours, where no tag is known.</param>
/// <param name="Id">The tag's 15 digits, or the cow's number.</param>
public sealed record IcarAnimal(string Scheme, string Id);

/// <summary>Where an event comes from.</summary>
/// <param name="Source">The source system.</param>
/// <param name="SourceId">Its id there.</param>
/// <param name="Modified">When it was changed last.</param>
/// <param name="Created">When it was made.</param>
/// <param name="Creator">Who made it; null when not said.</param>
public sealed record IcarMeta(string Source, string SourceId, DateTimeOffset Modified, DateTimeOffset Created, string? Creator);

/// <summary>A code of some scheme.</summary>
/// <param name="Scheme"><c>gaitwatch.lesion</c>: the codes of the ICAR Claw Health Atlas, and the few words findings have beside them. The standard's own scheme of disease keys is not used: its list is not in the public text.</param>
/// <param name="Id">The code.</param>
public sealed record IcarCode(string Scheme, string Id);

/// <summary>Where on the animal.</summary>
/// <param name="Position"><c>LegsFrontLeft LegsFrontRight LegsRearLeft LegsRearRight</c>.</param>
public sealed record IcarPosition(string Position);

/// <summary>One diagnosis.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">The lesion in words.</param>
/// <param name="Description">What was noted; null when nothing was.</param>
/// <param name="DiagnosisCode">The lesion's code.</param>
/// <param name="Site">Claw and zone; null when not said.</param>
/// <param name="Severity"><c>Light Moderate Severe</c>; null when not said.</param>
/// <param name="Positions">The leg.</param>
public sealed record IcarDiagnosis(
    string Id, string Name, string? Description, IcarCode DiagnosisCode, string? Site, string? Severity, IReadOnlyList<IcarPosition> Positions);

/// <summary>A finding as a diagnosis event.</summary>
/// <param name="ResourceType"><c>icarDiagnosisEventResource</c>.</param>
/// <param name="Id">The finding's id.</param>
/// <param name="Meta">Where it comes from.</param>
/// <param name="Animal">Whose foot.</param>
/// <param name="EventDateTime">When it was in hand.</param>
/// <param name="Responsible">Who found it; null when not said.</param>
/// <param name="Diagnoses">What was found; empty when nothing was.</param>
/// <param name="Finding">The finding with all that was done, as the rest of the API writes it.</param>
public sealed record DiagnosisEvent(
    string ResourceType, string Id, IcarMeta Meta, IcarAnimal Animal, DateTimeOffset EventDateTime, string? Responsible,
    IReadOnlyList<IcarDiagnosis> Diagnoses, FindingView Finding);

/// <summary>An alert as an attention event.</summary>
/// <param name="ResourceType"><c>icarAttentionEventResource</c>.</param>
/// <param name="Id">The alert's id.</param>
/// <param name="Meta">Where it comes from.</param>
/// <param name="Animal">Which cow.</param>
/// <param name="EventDateTime">When it was raised.</param>
/// <param name="AlertEndDateTime">When it was closed; null while it is open.</param>
/// <param name="Category"><c>Health</c>.</param>
/// <param name="Causes"><c>Lameness</c>.</param>
/// <param name="Priority"><c>Urgent</c> for today, <c>Normal</c> for the next visit, <c>Informational</c> for one only watched.</param>
/// <param name="DeviceAttentionScore">The drop of the leg's load, per cent.</param>
/// <param name="Alert">The alert with its label, as the rest of the API writes it.</param>
public sealed record AttentionEvent(
    string ResourceType, string Id, IcarMeta Meta, IcarAnimal Animal, DateTimeOffset EventDateTime, DateTimeOffset? AlertEndDateTime,
    string Category, IReadOnlyList<string> Causes, string Priority, double DeviceAttentionScore, AlertView Alert);
