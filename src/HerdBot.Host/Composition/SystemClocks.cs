namespace HerdBot.Host.Composition;

/// <summary>The one place that names the machine's clock.</summary>
public static class SystemClocks
{
#pragma warning disable RS0030 // The composition root names the system clock once; everything else is given it.
    /// <summary>The machine's clock.</summary>
    public static TimeProvider Real => TimeProvider.System;
#pragma warning restore RS0030
}
