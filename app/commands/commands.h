// One function a command: takes its request, prints, and gives the exit status.
#pragma once

#include "app/arguments.h"

namespace hammerline::app {

int run(const DemoRequest&, bool json);
int run(const NewRequest&, bool json);
int run(const PianoRequest&, bool json);
int run(const PassRequest&, bool json);
int run(const ImportRequest&, bool json);
int run(const EnterRequest&, bool json);
int run(const UndoRequest&, bool json);
int run(const OverrideRequest&, bool json);
int run(const CheckRequest&, bool json);
int run(const ActionRequest&, bool json);
int run(const PlanRequest&, bool json);
int run(const TickRequest&, bool json);
int run(const CompareRequest&, bool json);
int run(const SurveyRequest&, bool json);
int run(const WorkRequest&, bool json);
int run(const NextRequest&, bool json);
int run(const PrintRequest&, bool json);
int run(const ExportRequest&, bool json);
int run(const ListRequest&, bool json);
int run(const BackupRequest&, bool json);
int run(const RestoreRequest&, bool json);
int run(const MergeRequest&, bool json);
int run(const VerifyRequest&, bool json);
int run(const IdsRequest&, bool json);
int run(const ArchiveRequest&, bool json);
int run(const RemarkRequest&, bool json);
int run(const PhotoRequest&, bool json);
int run(const ShareRequest&, bool json);
int run(const AdviceRequest&, bool json);
int run(const ExperienceRequest&, bool json);
int run(const VisitsRequest&, bool json);
int run(const GaugeRequest&, bool json);
int run(const EstimateRequest&, bool json);

} // namespace hammerline::app
