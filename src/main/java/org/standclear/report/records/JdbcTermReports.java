package org.standclear.report.records;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.report.TermReport;
import org.standclear.report.TermReport.Happened;
import org.standclear.report.TermReport.RunsBetween;
import org.standclear.report.TermReports;
import org.standclear.report.TermSpan;
import org.standclear.report.records.ExposureRows.Start;

/** Puts a term together from its rows, in one transaction that only reads. */
@Service
class JdbcTermReports implements TermReports {

    private final ExposureRows exposure;
    private final UseRows use;
    private final UpkeepRows upkeep;
    private final Labs labs;
    private final LabTime labTime;

    JdbcTermReports(ExposureRows exposure, UseRows use, UpkeepRows upkeep, Labs labs, LabTime labTime) {
        this.exposure = exposure;
        this.use = use;
        this.upkeep = upkeep;
        this.labs = labs;
        this.labTime = labTime;
    }

    @Override
    @Transactional(readOnly = true)
    public TermReport of(TermSpan span) {
        Days days = days(span);
        List<Start> starts = exposure.starts(days);
        return new TermReport(
                span,
                exposure.exposure(days, starts.size()),
                exposure.counts(days),
                between(starts.stream().map(Start::at).toList(), exposure.events(days)),
                use.cells(days, starts),
                use.authorisations(days),
                use.actions(days),
                use.fairness(days),
                upkeep.of(days));
    }

    @Override
    @Transactional(readOnly = true)
    public Happened happened(TermSpan span) {
        Days days = days(span);
        return new Happened(exposure.startsIn(days), exposure.counts(days));
    }

    private Days days(TermSpan span) {
        Instant from = span.first().atStartOfDay(labTime.zone()).toInstant();
        Instant until = span.last().plusDays(1).atStartOfDay(labTime.zone()).toInstant();
        return new Days(labs.theLab().id(), from, until, span.first(), span.last());
    }

    /** Both in order of time. */
    static RunsBetween between(List<Instant> starts, List<Instant> events) {
        List<Integer> gaps = new ArrayList<>();
        int at = 0;
        for (Instant event : events) {
            int before = at;
            while (at < starts.size() && !starts.get(at).isAfter(event)) {
                at++;
            }
            gaps.add(at - before);
        }
        return new RunsBetween(gaps, starts.size() - at);
    }
}
